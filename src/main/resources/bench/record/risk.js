// Asks for the risk of what is dialled now.
import { live } from "../live.js";
import { showPoison } from "./poison.js";
import { settings, showFolded } from "./settings.js";

export function askRisk() {
  showFolded();
  showPoison();
  live("/live?" + new URLSearchParams(settings()));
}
