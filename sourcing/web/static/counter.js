// The pages work without this. It puts the focus on what was refused, and shows that a form was sent.
"use strict";
const refused = document.getElementById("refused");
if (refused) refused.focus();
document.addEventListener("submit", (event) => {
  const button = event.submitter;
  if (button && event.target.method === "post") button.setAttribute("aria-busy", "true");
});
// Coming back by the back button: a form sent before may be looked at, and its buttons are no longer busy.
window.addEventListener("pageshow", () => {
  for (const button of document.querySelectorAll("[aria-busy]")) button.removeAttribute("aria-busy");
});
