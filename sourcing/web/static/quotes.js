// The page of answers works without this. It shows the total while lines are answered; it computes nothing: every total
// is written out by the server, at the number the answers make to the base of three (as it is 0, yes 1, no 2).
"use strict";
const form = document.getElementById("answers");
const said = document.getElementById("said");
if (form && said && said.dataset.totals) {
  const totals = said.dataset.totals.split("|");
  const asked = said.dataset.asked.split(" ");
  const total = () => {
    const answers = new FormData(form);
    const word = (label) => ["", "yes", "no"].indexOf(answers.get(`line-${label}`) || "");
    const place = asked.reduce((sum, label, at) => sum + word(label) * 3 ** at, 0);
    document.getElementById("total").textContent = totals[place];
  };
  document.getElementById("work-out").hidden = true;
  document.getElementById("comes-to").classList.add("live");
  form.addEventListener("change", total);
  window.addEventListener("pageshow", total);
  total();
}
