// The customer's page works without this. It shows the total at once, takes a drawn signature, and keeps what was
// filled in when the network falls away. It computes nothing: every total is written out by the server.
"use strict";
const form = document.getElementById("answers");
const printing = document.getElementById("print");
const DRAFT = `draft ${location.pathname}`;

function kept() {
  try { return JSON.parse(sessionStorage.getItem(DRAFT)) || {}; } catch { return {}; }
}
function keep(draft) {
  try { sessionStorage.setItem(DRAFT, JSON.stringify(draft)); } catch { /* a full or forbidden store: nothing is kept */ }
}

if (printing) {
  printing.hidden = false;
  printing.addEventListener("click", () => window.print());
}
if (document.getElementById("answered")) sessionStorage.removeItem(DRAFT);

// A page that says what was refused came by sending a form, and Back could not lead to it again.
if (form) history.replaceState(null, "", location.href);

if (form && form.elements.name) {
  const fields = [...form.querySelectorAll("input[type=radio], input[name=name], textarea")];
  const shown = document.getElementById("total");
  const served = shown ? shown.textContent : "";
  const pad = signature();
  restore();
  total();
  for (const event of ["input", "change"]) form.addEventListener(event, () => { total(); remember(); });
  form.addEventListener("submit", send);
  window.addEventListener("pageshow", total);

  function restore() {
    const draft = kept();
    if (fields.some((one) => one.type === "radio" ? one.checked && one.value : one.value)) return; // the server's word first
    for (const one of fields) {
      if (!(one.name in (draft.fields || {}))) continue;
      if (one.type === "radio") one.checked = draft.fields[one.name] === one.value;
      else one.value = draft.fields[one.name];
    }
  }

  function remember() {
    const filled = {};
    for (const one of fields) if (one.type !== "radio" || one.checked) filled[one.name] = one.value;
    keep({ fields: filled, drawn: pad && !pad.isEmpty() ? pad.toData() : [] });
  }

  function total() {
    if (!form.dataset.totals) return totalOfTheServer();
    const asked = (form.dataset.asked || "").split(" ").filter(Boolean);
    const totals = form.dataset.totals.split("|");
    const yes = new FormData(form);
    const place = asked.reduce((sum, label, at) => sum + (yes.get(`line-${label}`) === "approve" ? 2 ** at : 0), 0);
    shown.textContent = totals[place];
    document.getElementById("work-out").hidden = true;
    document.getElementById("comes-to").classList.add("live");
  }

  // With too many lines to write every total out, the figure stands for the marks the server worked it out for only.
  function totalOfTheServer() {
    if (!shown) return;
    const isAsServed = fields.every((one) => one.type !== "radio" || one.checked === one.defaultChecked);
    shown.textContent = isAsServed ? served : form.dataset.waits;
  }

  function signature() {
    const canvas = document.getElementById("pad");
    if (!canvas || !window.SignaturePad) return null;
    document.getElementById("drawn").hidden = false;
    const made = new SignaturePad(canvas, { penColor: "#000000", backgroundColor: "rgb(255,255,255)" });
    const fit = () => {
      const drawn = made.isEmpty() ? kept().drawn || [] : made.toData();
      const ratio = Math.min(window.devicePixelRatio || 1, 2);
      canvas.width = canvas.offsetWidth * ratio;
      canvas.height = canvas.offsetHeight * ratio;
      canvas.getContext("2d").scale(ratio, ratio);
      made.clear();
      if (drawn.length) made.fromData(drawn);
    };
    fit();
    window.addEventListener("resize", fit);
    made.addEventListener("endStroke", () => remember());
    document.getElementById("wipe").addEventListener("click", () => { made.clear(); remember(); });
    return made;
  }

  function send(event) {
    if (form.dataset.totals && event.submitter && event.submitter.id === "work-out") { // Enter in a field: the total stands there already
      event.preventDefault();
      event.submitter.removeAttribute("aria-busy");
      return;
    }
    form.elements.drawing.value = pad && !pad.isEmpty() ? pad.toDataURL() : "";
    const away = navigator.onLine === false;
    document.getElementById("no-network").hidden = !away;
    if (!away) return;
    event.preventDefault();
    for (const button of form.querySelectorAll("[aria-busy]")) button.removeAttribute("aria-busy");
  }
}
