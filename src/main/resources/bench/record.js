"use strict";
(() => {
  const form = document.getElementById("record");
  if (!form) return;
  const at = id => document.getElementById(id);
  const all = (what, within = document) => [...within.querySelectorAll(what)];
  const LAST = "bench.last", PERSON = "bench.person", TAPES = "bench.tapes", DRAFT = "bench.draft";
  const ALPHABET = "0123456789ABCDEFGHJKMNPQRSTVWXYZ", SOON = 3000, RECENT = 600000, DEAF = 1200, SHORTEST_PASS = 1;
  const firstPasses = Number(form.passes.value), plural = n => n + (n === 1 ? " pass" : " passes");
  let shown = null, reading = null, correcting = null, resume = null, counted = 0, sure = false, pending = null, photo = null;
  // The stopwatch: when the pass under way began, the passes timed, the time per pass before the first of them.
  let lap = 0, laps = [], untimed = "";

  // Settings
  const chosen = key => at("c-" + key).selectedOptions[0];
  const way = () => form.querySelector("input[name=form]:checked").value;
  function settings() {
    const values = {};
    for (const key of ["rig", "board", "finish"]) values[key] = at("c-" + key).value;
    for (const input of all(".turn input", form)) if (input.value.trim()) values[input.name] = input.value.trim();
    values.form = way();
    values.power_unit = form.querySelector("input[name=power_unit]:checked").value;
    return values;
  }
  const unitOf = key => form.querySelector(`[data-unit=${key}]`).textContent;
  const labelOf = input => input.closest(".knob").querySelector("label").firstChild.textContent.replace(/, *$/, "");
  function dialled() {
    const words = input => /\d$/.test(input.value.trim()) ? input.value.trim() + " " + unitOf(input.name) : input.value.trim();
    return [words(at("k-power")), ...all(`.of-${way()} .turn input`, form).map(i => labelOf(i).toLowerCase() + " " + words(i))].join(", ");
  }
  // The limits that hold for every rig and board; the bench knows all units, and looks again.
  function beyond() {
    if (!/^[1-9]\d{0,3}$/.test(form.passes.value.trim())) return `Passes must be a whole number, 1 or more, not "${form.passes.value.trim()}".`;
    const depth = number(at("depth").value);
    if (depth && Bench.thousands(at("depth").value)) return `Depth removed of ${at("depth").value.trim()} must be written without a comma, which could stand between thousands.`;
    if (depth && !(depth.value >= 0)) return `Depth removed must be a number in µm, 0 or more, not "${at("depth").value.trim()}".`;
    if (reading) return "";
    for (const input of all("section .turn input", form)) {
      if (input === form.passes || input.closest("[hidden]")) continue;
      const label = labelOf(input), own = unitOf(input.name), given = number(input.value);
      if (!given && ["pulse", "patch"].includes(input.name)) continue;
      if (!given) return `${label} is not set; give it in ${own}.`;
      if (Bench.thousands(input.value)) return `${label} of ${input.value.trim()} must be written without a comma, which could stand between thousands.`;
      if (Number.isNaN(given.value)) return `${label} must be a number in ${own}, not "${input.value.trim()}".`;
      const unit = given.unit || own, most = unit === "%" ? 100 : Infinity;
      if (!(given.value > 0)) return `${label} must be above 0 ${unit}, not ${given.value} ${unit}.`;
      if (given.value > most) return `${label} must be between 0 and ${most} ${unit}, not ${given.value} ${unit}.`;
    }
    return "";
  }
  const number = text => text.trim() ? Bench.number(text) : null;
  function ask() {
    at("place-words").textContent = ["board", "finish", "rig"].map(k => at("c-" + k).value).join(", ");
    at("lesser-words").textContent = all("#lesser .turn input").filter(i => i.value && !i.closest("[hidden]"))
      .map(i => i.value + " " + unitOf(i.name)).join(", ");
    Bench.live("/live?" + new URLSearchParams(settings()));
  }
  function arrange() {
    const now = way(), pulsed = chosen("rig").dataset.kind === "pulsed";
    for (const w of ["hand", "timed", "scan"]) all(".of-" + w, form).forEach(row => { row.hidden = w !== now; });
    all(".pulsed-only", form).forEach(row => { row.hidden = !pulsed; });
    form.querySelector("[data-unit=power]").textContent = form.querySelector("input[name=power_unit]:checked").value;
  }
  at("c-rig").addEventListener("change", () => {
    for (const key of ["spot", "rep", "pulse", "width"]) at("k-" + key).value = chosen("rig").dataset[key] || "";
  });
  form.addEventListener("change", e => {
    if (e.target.name === "outcome") { alone(e.target); if (!sure) trouble(""); }
    else { arrange(); changed(); }
  });
  form.addEventListener("input", e => { if (e.target.closest(".turn") || e.target === at("depth")) changed(); });
  // What was refused or doubted is no longer what stands here.
  function changed() {
    sure = false;
    trouble("");
    at("keep").textContent = reading ? "Keep this reading" : "Keep this patch";
    ask();
  }

  // The number pad, for gloves; a keyboard types into the field itself.
  const pad = at("pad");
  let padFor = null, fresh = true;
  form.addEventListener("click", e => {
    const input = e.target.closest(".turn input, input[data-pad]");
    if (!input || input.disabled || e.detail === 0) return;
    padFor = input;
    fresh = true;
    at("pad-title").textContent = input.dataset.pad || input.closest(".knob").querySelector("label").textContent;
    at("pad-value").textContent = input.value;
    pad.showModal();
  });
  form.addEventListener("keydown", e => {
    if (e.key === "Enter" && e.target.matches("input")) { e.preventDefault(); changed(); }
  });
  pad.addEventListener("click", e => {
    const digit = e.target.closest("[data-digit]")?.dataset.digit, value = at("pad-value");
    if (!digit) return;
    if (digit === "back") { fresh = false; value.textContent = value.textContent.slice(0, -1); } else put(digit);
  });
  function put(sign) {
    const value = at("pad-value"), have = fresh ? "" : value.textContent;
    fresh = false;
    if (have.length < 9 && !(/[.,]/.test(sign) && have.includes("."))) value.textContent = have + sign;
  }
  // Enter sets what stands on the pad, whichever key has the focus; Cancel alone keeps its own Enter.
  pad.addEventListener("keydown", e => {
    if (e.key === "Enter" && e.target !== at("pad-cancel")) {
      e.preventDefault();
      if (!e.repeat) set();
      return;
    }
    if (/^[0-9.,]$/.test(e.key)) put(e.key);
    else if (e.key === "Backspace") pad.querySelector("[data-digit=back]").click();
  });
  at("pad-cancel").addEventListener("click", () => pad.close());
  at("pad-set").addEventListener("click", set);
  function set() {
    const typed = at("pad-value").textContent;
    padFor.value = Bench.thousands(typed) ? typed : typed.replace(",", ".");
    pad.close();
    padFor.dispatchEvent(new Event("input", { bubbles: true }));
  }

  // Passes and stopwatch
  const atRest = at("watch-words").textContent, seconds = () => (performance.timeOrigin + performance.now()) / 1000;
  function count(by) {
    counted = Math.max(0, counted + by);
    const made = reading ? reading.passes : 0;
    form.passes.value = String(counted ? made + counted : reading ? made + 1 : firstPasses);
    showCounted();
    changed();
  }
  function showCounted() { at("counted").textContent = counted ? "(" + counted + " so far)" : ""; }
  at("count").addEventListener("click", () => { count(1); saveDraft(); });
  at("watch").addEventListener("click", () => {
    // A second tap of a clumsy glove must neither count a pass nor stop the watch.
    if (lap && seconds() - lap < SHORTEST_PASS) {
      showWatch("Tapped twice: a pass shorter than 1 s does not count, and the watch runs on from the first tap.");
      return;
    }
    if (lap) {
      if (!laps.length) untimed = at("k-seconds").value;
      laps.push(seconds() - lap);
      lap = 0;
      timed();
      count(1);
    } else lap = seconds();
    showWatch();
    saveDraft();
  });
  at("unlap").addEventListener("click", () => {
    laps.pop();
    timed();
    count(-1);
    showWatch();
    saveDraft();
    at("watch").focus();
  });
  // The settings of a patch that is read further stay as they were burned.
  function timed() {
    const mean = laps.reduce((a, b) => a + b, 0) / laps.length;
    if (!reading) at("k-seconds").value = laps.length ? String(Math.round(mean * 10) / 10) : untimed;
  }
  function showWatch(words) {
    at("watch").setAttribute("aria-pressed", String(lap > 0));
    at("watch").textContent = lap ? "Stop: pass over the area is made" : laps.length ? "Start the next pass" : "Start the stopwatch";
    at("unlap").hidden = laps.length === 0;
    at("watch-words").textContent = words || (laps.length === 0 ? atRest
      : laps.length === 1 ? "One pass timed." : laps.length + " passes timed; their mean counts.");
  }
  function resetWatch() {
    lap = 0;
    laps = [];
    showWatch();
  }

  // Outcomes: clean stands alone
  function alone(box) {
    if (!box.checked) return;
    all("input[name=outcome]", form).forEach(other => {
      if (other !== box && (box.value === "clean" || other.value === "clean")) other.checked = false;
    });
  }
  at("photo").addEventListener("change", () => {
    const file = at("photo").files[0];
    photo = file ? Bench.uuid7() : null;
    const known = photo;
    const told = () => { if (photo === known) { showPhoto(); saveDraft(); } };
    if (file) Bench.hold(DRAFT, { id: known, file }).then(told, told); else told();
  });
  function showPhoto() { at("photo-words").textContent = photo ? "It is kept with the patch, with its checksum." : ""; }

  // A form left half-way, to look up a window, comes back as it was left. It waits for this page alone;
  // its photo, too large to wait with it, lies in the store of photos, the latest of this device.
  function snapshot() {
    const values = {};
    for (const e of form.elements) {
      if (!e.name || e.name === "by" || e.type === "radio" && !e.checked) continue;
      if (e.name !== "outcome") values[e.name] = e.value;
      else if (e.checked) values.outcome = [...values.outcome || [], e.value];
    }
    return { values, reading, correcting, resume, counted, lap, laps, untimed, photo, search: location.search };
  }
  const holdDraft = form => sessionStorage.setItem(DRAFT, JSON.stringify(form));
  const saveDraft = () => { if (!pending) holdDraft(snapshot()); };
  const dropDraft = () => { if (resume) holdDraft(resume); else sessionStorage.removeItem(DRAFT); };
  // A link with settings of its own goes before what was left, unless the page is only loaded again.
  function leftDraft() {
    const text = sessionStorage.getItem(DRAFT), left = text ? JSON.parse(text) : null;
    const led = location.search && performance.getEntriesByType("navigation")[0]?.type === "navigate";
    return left && !led && (!location.search || left.search === location.search) ? left : null;
  }
  function restore(left) {
    ({ reading, correcting, resume } = left);
    begin();
    ({ counted, lap, laps, untimed, photo } = left);
    for (const e of form.elements) fill(e, left.values);
    arrange();
    showCounted();
    showWatch();
    if (photo) Bench.held(DRAFT).then(held => {
      if (!held || held.id !== photo) return;
      const files = new DataTransfer();
      files.items.add(held.file);
      at("photo").files = files.files;
      showPhoto();
    }).catch(() => {});
    all("#record details:not(.place):not(#lesser)").forEach(d => { d.open = !!(photo || left.values.note || left.values.depth); });
    changed();
  }
  function fill(e, values) {
    const value = values[e.name];
    if (e.name === "outcome") e.checked = (value || []).includes(e.value);
    else if (value === undefined) { if (!reading && e.closest(".turn")) e.value = ""; }
    else if (e.type === "radio") e.checked = e.value === value;
    else if (e.tagName !== "SELECT" || [...e.options].some(o => o.value === value)) e.value = value;
  }
  function dropPhoto(id) { Bench.held(DRAFT).then(held => held && held.id === id && Bench.forget(DRAFT)).catch(() => {}); }
  for (const kind of ["input", "change"]) form.addEventListener(kind, e => { if (e.target !== at("photo") && e.target !== at("by")) saveDraft(); });

  // Keeping
  const trouble = text => { at("trouble").textContent = text || ""; at("trouble").hidden = !text; if (text) at("trouble").scrollIntoView({ block: "center" }); };
  const ownCode = () => "W-" + [...crypto.getRandomValues(new Uint8Array(4))].map(b => ALPHABET[b % 32]).join("");
  form.addEventListener("submit", e => { e.preventDefault(); keep(); });
  function keep() {
    trouble("");
    const outcome = all("input[name=outcome]:checked", form).map(i => i.value).join("+");
    if (!outcome) { trouble("Tap what you see first: clean, or any of tint, char and residue."); return; }
    if (pending) return;
    const wrong = beyond();
    if (wrong) { trouble(wrong); return; }
    const id = correcting ? correcting.id : Bench.uuid7(), by = at("by").value.trim();
    const body = { id, at: correcting ? correcting.at : Bench.now(), outcome, passes: form.passes.value.trim(), soot: form.soot.value,
      note: at("note").value, depth: at("depth").value, by, sure };
    if (reading) body.of_patch = reading.patch; else Object.assign(body, settings());
    const tape = correcting ? correcting.tape : "";
    if (tape) body.tape = tape;
    const words = (tape ? tape + ": " : "") + outcome + " after " + plural(Number(body.passes)) + ", "
      + (reading ? "further passes on " + reading.code : at("c-board").value + ", " + dialled());
    pending = { id, kind: reading ? "reading" : "patch", patch: body.of_patch || id, passes: Number(body.passes), outcome,
      code: reading ? reading.code : tape, before: reading, file: at("photo").files[0], photo, by };
    at("keep").disabled = true;
    dropDraft();
    // A corrected entry keeps its identity and its place: its photos and further readings wait behind it.
    if (correcting && Bench.queue().some(i => i.id === id)) Bench.change(id, i => [{ ...i, body, words, state: "waiting", sentence: "" }]);
    else Bench.add(reading ? "/entries/reading" : "/entries/patch", body, words, { of: reading });
    Bench.flush();
    setTimeout(() => { if (pending && pending.id === id) wait(); }, SOON);
  }

  // Not taken yet: the tape gets a code of this device's own, which the bench keeps.
  function wait() {
    const done = pending;
    if (done.kind === "patch" && !done.code) {
      done.code = ownCode();
      Bench.change(done.id, i => [{ ...i, body: { ...i.body, tape: done.code }, words: done.code + ": " + i.words }]);
    }
    settle(done, true);
  }
  function settle(done, waiting) {
    pending = null;
    at("keep").disabled = false;
    correcting = null;
    resetWatch();
    if (done.file) Bench.addPhoto(done.patch, done.code, done.file, done.by).then(() => { dropPhoto(done.photo); Bench.flush(); },
      () => trouble("The photo could not be kept on this device; take it again when the bench is reached."));
    const last = { id: done.id, kind: done.kind, patch: done.patch, code: done.code, before: done.before, passes: done.passes, outcome: done.outcome, waiting, at: Date.now() };
    Bench.keep(LAST, last);
    showKept(last);
  }
  Bench.onReply((item, reply) => {
    const tape = item.body.tape;
    if (reply.status === 200 && tape && reply.code !== tape) Bench.keep(TAPES, [...Bench.kept(TAPES, []), { tape, code: reply.code }]);
    if (pending && item.id === pending.id) {
      if (reply.status === 200) { pending.code = reply.code; settle(pending, false); return; }
      pending = null;
      if (correcting) correcting.sentence = reply.sentence; else Bench.change(item.id, () => []);
      at("keep").disabled = false;
      saveDraft();
      trouble(reply.sentence);
      if (reply.status === 409) { sure = true; at("keep").textContent = "I am sure: keep it"; }
      return;
    }
    if (reply.status !== 200) return;
    const last = Bench.kept(LAST, null), taken = { waiting: false, code: reply.code };
    if (last && last.id === item.id) Bench.keep(LAST, { ...last, ...taken });
    if (shown && shown.id === item.id) showKept({ ...shown, ...taken });
    list();
  });
  // Another page of this device may have sent what this one shows.
  addEventListener("storage", e => {
    const last = e.key === LAST ? Bench.kept(LAST, null) : null;
    if (last && shown && last.id === shown.id) showKept(last);
  });
  function forgetLast() {
    const last = Bench.kept(LAST, null);
    if (last && shown && last.id === shown.id) Bench.keep(LAST, null);
  }

  // Other pages of this device keep entries too; undo and further passes are for the one shown here.
  function showKept(last) {
    if (at("kept").hidden) deafen();
    shown = last;
    at("kept").hidden = false;
    form.hidden = true;
    at("title").textContent = last.waiting ? "Kept on this device" : "Kept in the log";
    at("kept-title").textContent = last.kind === "patch" ? "Write on the tape" : "Further reading on";
    at("kept-code").textContent = last.code;
    tellKept();
    at("kept-code").hidden = at("undo").hidden = at("further").hidden = false;
    at("kept-code").classList.remove("struck");
    at("kept").focus();
  }
  function tellKept() {
    const item = Bench.queue().find(i => i.id === shown.id);
    at("kept-words").textContent = shown.outcome + " after " + plural(shown.passes) + ". "
      + (!shown.waiting ? "The log has it." : item && item.state !== "waiting" ? "The log has not taken it yet: it waits on this device and needs you."
        : "It waits on this device and is sent when the bench is reached.");
  }
  // The panel may come to lie under the finger that tapped Keep: a second tap must not undo the entry
  // or take its code out of sight. Inert buttons take no tap, no click and no key.
  let deaf = 0;
  function deafen() {
    clearTimeout(deaf);
    at("kept-actions").inert = true;
    deaf = setTimeout(() => { at("kept-actions").inert = false; }, DEAF);
  }
  // Of a patch nothing stands that could be read further; of a reading, its patch as it was before.
  function showUndone(last) {
    const patch = last.kind === "patch";
    shown = patch ? null : last.before;
    at("title").textContent = "Taken back";
    at("kept-title").textContent = patch ? "Strike it out on the tape" : "Reading taken back";
    at("kept-code").hidden = !patch;
    at("kept-code").classList.toggle("struck", patch);
    at("kept-words").textContent = patch ? "Taken back: " + last.code + " counts nowhere. Its code is not used again."
      : "Taken back: the reading counts nowhere." + (shown ? " " + shown.code + " stands as " + shown.outcome + " after " + plural(shown.passes) + "." : "");
    at("undo").hidden = true;
    at("further").hidden = !shown;
    at("kept").focus();
  }
  function begin() {
    shown = null;
    at("kept").hidden = true;
    form.hidden = false;
    at("title").textContent = correcting ? "Correct " + (reading ? "the reading on " + reading.code : correcting.tape || "this patch")
      : reading ? "Further passes on " + reading.code : "Record a patch";
    at("reading-of").textContent = (correcting ? correcting.sentence + " " : "")
      + (reading && reading.outcome ? reading.code + " was " + reading.outcome + " after " + plural(reading.passes) + ". Its settings stay." : "");
    at("reading-of").hidden = !at("reading-of").textContent;
    lock(!!reading);
    all("input[name=outcome]", form).forEach(i => { i.checked = false; });
    all("input[name=soot]", form).forEach(i => { i.checked = i.value === ""; });
    for (const id of ["note", "depth", "photo"]) at(id).value = "";
    photo = null;
    showPhoto();
    counted = 0;
    showCounted();
    resetWatch();
    form.passes.value = String(reading ? reading.passes + 1 : firstPasses);
    trouble("");
    scrollTo(0, 0);
  }
  function next() {
    forgetLast();
    correcting = null;
    if (resume) { restore(resume); saveDraft(); } else further(null);
    list();
  }
  function further(patch) {
    reading = patch;
    correcting = null;
    begin();
    changed();
    saveDraft();
  }
  // A patch that is half-way on the form comes back after the correction.
  function correct(item) {
    if (!form.hidden && !correcting) resume = snapshot();
    const { id, at: when, tape = "", of_patch: patch, ...values } = item.body;
    const of = patch ? item.of || { patch, code: "this patch", outcome: "", passes: 0 } : null;
    restore({ values: { ...values, outcome: values.outcome.split("+") }, reading: of, resume, photo: null, lap: 0, laps: [], untimed: "",
      correcting: { id, at: when, tape, sentence: item.sentence }, counted: Math.max(0, Number(values.passes) - (of ? of.passes : 0)) });
    saveDraft();
    list();
    form.scrollIntoView();
  }
  function lock(on) {
    all("section .turn input, section .turn button, section input[type=radio], #place select", form)
      .filter(i => i.name !== "passes" && i.dataset.for !== "k-passes").forEach(i => { i.disabled = on; });
  }
  at("next").addEventListener("click", next);
  at("further").addEventListener("click", () => further(shown));
  at("undo").addEventListener("click", () => {
    const last = shown, item = Bench.queue().find(i => i.id === last.id);
    if (item && item.tries === 0) {
      Bench.queue().filter(i => i.id === last.id || i.body.of_patch === last.id)
        .forEach(i => { Bench.change(i.id, () => []); Bench.forget(i.id); });
    } else {
      Bench.add("/entries/undo", { id: Bench.uuid7(), of: last.id, of_patch: last.patch, by: at("by").value.trim() }, "undo of " + last.code);
      Bench.flush();
    }
    forgetLast();
    showUndone(last);
  });

  // What waits
  function button(text, work) {
    const b = document.createElement("button");
    b.type = "button";
    b.textContent = text;
    b.addEventListener("click", () => work(b));
    return b;
  }
  function discard(id) {
    return button("Discard", b => {
      if (b.dataset.asked) {
        Bench.change(id, () => []);
        Bench.forget(id);
        if (correcting && correcting.id === id) next();
      } else { b.dataset.asked = "1"; b.textContent = "Tap again to discard"; }
    });
  }
  function list() {
    if (shown && !at("undo").hidden) tellKept();
    const waiting = Bench.queue(), tapes = Bench.kept(TAPES, []), ul = at("queue-list");
    // While an entry is on its way for the first time, there is nothing to tell yet.
    const unsent = waiting.filter(i => !(pending && i.id === pending.id));
    at("queue").hidden = unsent.length + tapes.length === 0;
    ul.textContent = "";
    for (const t of tapes) {
      const li = document.createElement("li");
      li.append(`The log has ${t.code}, but its tape says ${t.tape}. Change the tape. `,
        button("Tape changed", () => { Bench.keep(TAPES, Bench.kept(TAPES, []).filter(x => x.tape !== t.tape)); list(); }));
      ul.append(li);
    }
    for (const i of unsent) {
      const li = document.createElement("li");
      li.append(i.words + ". " + (i.state === "waiting" ? "Waiting. " : i.sentence + " "));
      const again = more => () => { Bench.change(i.id, x => [{ ...x, state: "waiting", body: { ...x.body, ...more } }]); Bench.flush(); };
      if (correcting && correcting.id === i.id) li.append(button("Correct it later", next), " ");
      else if (i.state !== "waiting" && i.body.outcome) li.append(button("Correct it", () => correct(i)), " ");
      if (i.state === "doubt") li.append(button("I am sure: keep it", again({ sure: true })), " ", discard(i.id));
      else if (i.state === "refused") li.append(button("Try again", again({})), " ", discard(i.id));
      ul.append(li);
    }
    if (unsent.some(i => i.state === "waiting")) {
      const li = document.createElement("li");
      li.append(button("Send now", Bench.flush));
      ul.append(li);
    }
  }
  document.addEventListener("bench-queue", list);

  at("by").value = Bench.kept(PERSON, form.dataset.person);
  at("by").addEventListener("input", () => Bench.keep(PERSON, at("by").value.trim() || null));
  // What the keyboard reaches must not lie behind the risk above or the Keep below, whose heights change.
  const bars = new ResizeObserver(() => {
    const root = document.documentElement.style, room = bar => form.hidden ? "0" : bar.offsetHeight + 10 + "px";
    root.scrollPaddingTop = room(at("live"));
    root.scrollPaddingBottom = room(at("keep").parentElement);
  });
  bars.observe(at("live"));
  bars.observe(at("keep").parentElement);
  arrange();
  list();
  const last = Bench.kept(LAST, null), left = leftDraft();
  if (left) restore(left);
  else if (form.dataset.readingId) {
    const [outcome, passes] = form.dataset.readingSeen.split("|");
    further({ patch: form.dataset.readingId, code: form.dataset.readingCode, outcome, passes: Number(passes) });
  } else {
    ask();
    if (last && !location.search && (last.waiting || Date.now() - last.at < RECENT)) showKept(last);
  }
})();
