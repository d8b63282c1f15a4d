// Every page: what waits on this device is sent and shown, step buttons step, long lists are searched, and pages come
// in place.
import { onConnection } from "./connection.js";
import { showLink } from "./link.js";
import { listen as listenToLinks } from "./navigate.js";
import { announce, onChange } from "./queue.js";
import { flush } from "./sending.js";
import { listen as listenToSteps } from "./steps.js";
// Last, as it changes the page: what is kept to be shown again is the page as it came.
import "./choose.js";

onChange(showLink);
onConnection(showLink);
listenToSteps();
listenToLinks();
addEventListener("online", flush);
addEventListener("storage", announce);
announce();
flush();
