// Pages as the bench sent them, for the time when it is not reached. They live as long as this page stays loaded.
const MOST = 40;
const pages = new Map(); // by path and question, the one sent last at the end

export const visited = path => pages.get(path);

export function visit(path, html) {
  pages.delete(path);
  pages.set(path, { html, at: Date.now() });
  if (pages.size > MOST) pages.delete(pages.keys().next().value);
}
