// Answers by single keys. The page works without: every answer has its button.
"use strict";
const keys = document.getElementById("keys");
// A scanner sends its keys within a few hundredths of a second: a key counts only when none follows at once.
const ALONE_FOR = 250;
const STORED = "keys of look-alikes";
if (keys) {
  const turn = keys.querySelector("button");
  const told = keys.querySelector("span");
  let on = true;
  try { on = localStorage.getItem(STORED) !== "off"; } catch { /* kept for this page only */ }
  const show = () => { turn.textContent = on ? keys.dataset.off : keys.dataset.on; told.hidden = !on; };
  turn.addEventListener("click", () => {
    on = !on;
    try { localStorage.setItem(STORED, on ? "on" : "off"); } catch { /* kept for this page only */ }
    show();
  });
  keys.hidden = false;
  show();
  let waiting = 0;
  let last = -Infinity;
  document.addEventListener("keydown", (event) => {
    const follows = event.timeStamp - last < ALONE_FOR;
    last = event.timeStamp;
    clearTimeout(waiting);
    if (!on || follows || event.repeat || event.ctrlKey || event.altKey || event.metaKey || event.isComposing) return;
    if (event.target.closest("input, select, textarea, [contenteditable]")) return;
    const does = document.querySelector(`[data-key="${CSS.escape(event.key.toLowerCase())}"]`);
    if (does) waiting = setTimeout(() => press(does), ALONE_FOR);
  });
  function press(does) {
    const words = does.dataset.words && document.getElementById(does.dataset.words);
    if (words && !words.value.trim()) { words.focus(); return; }
    does.click();
  }
}
