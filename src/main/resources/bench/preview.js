// The sheet is printed from its preview, so that the page stays.
import { whenShown } from "./page.js";

whenShown("print", button => {
  const sheet = document.getElementById("sheet");
  button.hidden = false;
  button.addEventListener("click", () => sheet.contentWindow.print());
});
