// Every page: what waits on this device is sent and shown in the head, and step buttons step.
import { showLink } from "./link.js";
import { announce, onChange } from "./queue.js";
import { flush } from "./sending.js";
import { listen } from "./steps.js";

onChange(showLink);
listen();
addEventListener("online", flush);
addEventListener("storage", announce);
addEventListener("DOMContentLoaded", () => { announce(); flush(); });
