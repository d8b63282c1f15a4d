// The sheet was asked for to be printed.
const SETTLED = 200;
addEventListener("load", () => setTimeout(() => print(), SETTLED));
