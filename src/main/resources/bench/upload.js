// Files are sent one by one, each as a body of its own; then the page shows what would come of them.
import { whenShown } from "./page.js";
import { answer, request } from "./requests.js";

const PATIENCE = 600000; // ms; a log with photos is large

whenShown("import", begin);
whenShown("merge", begin);

function begin(form) {
  form.addEventListener("submit", e => { e.preventDefault(); send(form); });
}

async function send(form) {
  const button = form.querySelector("button"), said = form.querySelector(".trouble"), asked = new URLSearchParams();
  const files = [...form.querySelectorAll("input[type=file]")].flatMap(input => [...input.files].map(file => ({ name: input.name, file })));
  said.hidden = true;
  if (!files.length) { say(said, "Choose a file first."); return; }
  button.disabled = true;
  button.setAttribute("aria-busy", "true");
  try {
    for (const { name, file } of files) {
      const reply = await answer(await request("/log/file?name=" + encodeURIComponent(file.name),
        { method: "POST", body: file, patience: PATIENCE, headers: { "Content-Type": "application/octet-stream" } }));
      if (reply.status !== 200) throw new Error(reply.sentence || "The file was not taken.");
      asked.append(name, reply.id);
    }
    form.querySelectorAll("select, textarea").forEach(field => { if (field.value.trim()) asked.append(field.name, field.value); });
    location.assign(form.getAttribute("action") + "?" + asked);
  } catch (e) {
    say(said, e instanceof TypeError || e.name === "AbortError" ? "No connection, so the file was not sent. Send it again when the bench is reached." : e.message);
  } finally {
    button.disabled = false;
    button.removeAttribute("aria-busy");
  }
}

function say(said, sentence) {
  said.textContent = sentence;
  said.hidden = false;
}
