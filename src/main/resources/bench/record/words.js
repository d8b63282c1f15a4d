// Words that several parts of the Record page say.
export const passesInWords = n => n + (n === 1 ? " pass" : " passes");
