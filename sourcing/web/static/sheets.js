// Works without this: files are chosen by the button, and a page that waits is loaded anew by itself.
"use strict";
const drop = document.querySelector(".drop");
if (drop) {
  const chosen = drop.querySelector("input");
  const over = (event) => { event.preventDefault(); drop.classList.add("over"); };
  const out = () => drop.classList.remove("over");
  drop.addEventListener("dragenter", over);
  drop.addEventListener("dragover", over);
  drop.addEventListener("dragleave", out);
  drop.addEventListener("drop", (event) => {
    event.preventDefault();
    out();
    if (event.dataTransfer.files.length) chosen.files = event.dataTransfer.files;
  });
  // A file that misses the field must not replace the page.
  for (const name of ["dragover", "drop"]) window.addEventListener(name, (event) => event.preventDefault());
}
const watched = document.querySelector("[data-watch]");
if (watched) {
  const words = watched.querySelector("[data-words]");
  const look = async () => {
    try {
      const told = await (await fetch(watched.dataset.watch)).json();
      if (told.over) { location.reload(); return; }
      if (words && told.words) words.textContent = told.words;
    } catch { /* the counter is not reached just now: ask again */ }
    setTimeout(look, 1500);
  };
  setTimeout(look, 800);
}
