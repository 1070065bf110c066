// Opened from the code on a sheet of paper: says at once whether that paper still stands, as far as this device knows.
(() => {
  const said = document.getElementById("paper-stands"), older = document.getElementById("older");
  if (!said) return;
  const show = () => {
    const from = /^#paper-([0-9a-f]{8})(?:-(\d+))?$/.exec(location.hash);
    if (!from) { said.hidden = true; return; }
    const [, mark, issue] = from, stands = said.dataset.mark.split(" ").includes(mark);
    const fill = (words) => words.replace("{mark}", `${mark.slice(0, 4)} ${mark.slice(4)}`).replace("{issue}", issue || "–");
    for (const part of said.querySelectorAll("[data-if]")) part.hidden = part.dataset.if !== (stands ? "stands" : "stop");
    for (const part of said.querySelectorAll("[data-says]")) part.textContent = fill(part.dataset.says);
    said.className = stands ? "stands" : "stands stop";
    // That a newer issue stands says more than the mark of a page that is older itself.
    said.hidden = stands && older !== null && !older.hidden;
  };
  show();
  addEventListener("hashchange", show);
  // Another script may hear of a newer issue later.
  if (older) new MutationObserver(show).observe(older, { attributes: true, attributeFilter: ["hidden"] });
})();
