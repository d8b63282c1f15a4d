"use strict";
// The sheet was opened to be printed.
addEventListener("load", () => setTimeout(() => print(), 200));
