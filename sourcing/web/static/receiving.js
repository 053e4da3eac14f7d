// The page works without this. A scan of a number that stands on one line is counted at once; all else goes to the
// shop's computer, which looks at the number first.
"use strict";
const scan = document.getElementById("scan");
const said = document.getElementById("said");
const key = (text) => text.toUpperCase().replace(/[^A-Z0-9]/g, "");
const pieces = (input) => (/^[0-9]+$/.test(input.value.trim()) ? Number(input.value.trim()) : 0);
const counts = [...document.querySelectorAll("#lines input[data-keys]")];

function lineFor(typed) {
  const wanted = key(typed);
  const mine = counts.filter((input) => input.dataset.keys.split(" ").includes(wanted));
  return mine.find((input) => pieces(input) < Number(input.dataset.left));
}

scan.addEventListener("keydown", (event) => {
  if (event.key !== "Enter") return;
  const typed = scan.value.trim();
  if (!typed || /[^\x20-\x7e]/.test(typed)) return;
  const input = lineFor(typed);
  if (!input || (input.value.trim() && !/^[0-9]+$/.test(input.value.trim()))) return;
  event.preventDefault();
  input.value = String(pieces(input) + 1);
  for (const other of counts) other.classList.toggle("fresh", other === input);
  const told = document.createElement("p");
  told.className = "done";
  const words = said.dataset.counted.replace("{number}", typed).replace("{line}", input.dataset.line);
  told.append(words.replace("{count}", input.value));
  said.replaceChildren(told);
  scan.value = "";
});
