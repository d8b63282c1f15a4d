// The address of an answer leads to its refusal, if it is one; a screen reader is led there too.
import { whenShown } from "./page.js";

whenShown("refused", refused => refused.focus());
