"""How the screen page looks and remembers: its style sheet and its few lines of script.

Everything is inside the page, so that it opens from a phone's downloads without a network. Colors follow the
phone's light or dark setting; pictures always stand on a light card, because fabric must look like fabric.
"""

from __future__ import annotations

from stitchflip.pictures.ink import PAPER

CSS = """
:root { color-scheme: light dark; --ink: #22262b; --quiet: #5d636b; --page: #fdfcf9; --card: PAPER; --hair: #d8d2c7;
  --thread: #a8482a; --tip: #3f6b62; --look: #7d5f0e; --tint: #f5f1ea; }
@media (prefers-color-scheme: dark) { :root { --ink: #ece8e1; --quiet: #b0aaa0; --page: #1c1e21; --card: PAPER;
  --hair: #454a50; --thread: #e59a7c; --tip: #8fc3b6; --look: #dcbc66; --tint: #26292d; } }
* { box-sizing: border-box; }
html { -webkit-text-size-adjust: 100%; }
body { margin: 0; background: var(--page); color: var(--ink); line-height: 1.5; font-size: 1.06rem;
  font-family: 'Source Sans Pro', 'Source Sans 3', 'Helvetica Neue', Arial, sans-serif;
  font-variant-numeric: lining-nums; }
main, footer { max-width: 46rem; margin: 0 auto; padding: 0 1.1rem; }
h1, h2, h3 { font-family: 'Libertinus Serif', 'Iowan Old Style', 'Palatino Linotype', Palatino, Georgia, serif;
  line-height: 1.2; font-weight: 600; text-wrap: balance; }
h1 { font-size: 2.3rem; font-weight: 400; margin: 1.2rem 0 .5rem; }
h2 { font-size: 1.5rem; margin: 2.8rem 0 1rem; padding-bottom: .45rem; border-bottom: 2px dashed var(--thread); }
h3 { font-size: 1.18rem; margin: 1.9rem 0 .6rem; }
h4 { font-size: 1.06rem; margin: .2rem 0 .4rem; }
p { margin: 0 0 .8rem; }
.lead { font-size: 1.12rem; font-style: italic; color: var(--quiet); }
.small, .muted, figcaption { color: var(--quiet); }
.small, figcaption { font-size: .92rem; }
.fraction { font-variant-numeric: diagonal-fractions; }
.chip { display: inline-block; width: .78em; height: .78em; border: 1px solid var(--ink); border-radius: 2px;
  margin-right: .25em; vertical-align: -.06em; }
.letter { font-weight: 700; white-space: nowrap; }
main nav ol { list-style: none; margin: 1rem 0; padding: 0; display: flex; flex-wrap: wrap; gap: .5rem; }
nav a { display: block; padding: .35rem .75rem; border: 1px dashed var(--thread); border-radius: 1rem; color: inherit;
  text-decoration: none; font-size: .95rem; }
nav a:focus-visible, nav a:hover { background: var(--tint); }
figure { margin: 1.2rem 0; text-align: center; }
.picture { background: var(--card); border-radius: 6px; padding: .5rem; overflow-x: auto; }
.picture svg { display: block; margin: 0 auto; max-width: 100%; height: auto; }
.table { overflow-x: auto; margin: 1rem 0 1.3rem; }
.table.wide table { min-width: 34rem; }
a { color: inherit; text-decoration-color: var(--thread); text-underline-offset: .15em; }
table { border-collapse: collapse; width: 100%; font-variant-numeric: tabular-nums lining-nums; }
caption { text-align: left; font-weight: 700; padding-bottom: .3rem; }
th, td { padding: .4rem .6rem .4rem 0; vertical-align: top; border-bottom: 1px solid var(--hair); text-align: left; }
th { font-weight: 400; font-size: .92rem; color: var(--quiet); border-bottom: 1.5px solid var(--ink); }
tfoot td { font-weight: 700; background: var(--tint); }
.center { text-align: center; } .end { text-align: right; }
dl.facts { display: grid; grid-template-columns: minmax(6.5rem, auto) 1fr; gap: .4rem 1rem; margin: 1rem 0; }
dl.facts dt { color: var(--quiet); font-style: italic; } dl.facts dd { margin: 0; }
aside { margin: 1.3rem 0; padding: .9rem 1.1rem; background: var(--tint); border-left: 3px dashed var(--thread);
  border-radius: 0 6px 6px 0; }
aside > :last-child { margin-bottom: 0; }
aside .title { font-weight: 700; color: var(--thread); margin-bottom: .4rem; }
aside.tip { border-color: var(--tip); } aside.tip .title { color: var(--tip); }
aside.look { border-color: var(--look); } aside.look .title { color: var(--look); }
ul, main ol { padding-left: 1.3rem; margin: .6rem 0 1rem; } li { margin-bottom: .35rem; }
ul.ticks { list-style: none; padding-left: 0; }
label.tick { display: flex; gap: .7rem; align-items: flex-start; min-height: 2.75rem; padding: .35rem 0;
  cursor: pointer; }
input[type=checkbox] { width: 1.35rem; height: 1.35rem; flex: none; margin: .1rem 0 0; accent-color: var(--thread); }
.columns > div { min-width: 0; }
.step { border-bottom: 1px solid var(--hair); padding: 1rem 0 .6rem; break-inside: avoid; }
.step .number { display: inline-block; min-width: 2em; text-align: center; border: 1.5px solid var(--thread);
  border-radius: 1em; color: var(--thread); padding: 0 .45em; margin-right: .5em; }
.step.done { opacity: .55; }
.after { color: var(--tip); }
.swatch { border: 1px dashed var(--quiet); border-radius: 3px; display: inline-block; }
.write { border-bottom: 1px dotted var(--quiet); display: flex; gap: .6rem; min-height: 2.4rem; align-items: flex-end;
  color: var(--quiet); }
.progress { position: sticky; bottom: 0; background: var(--page); border-top: 1px solid var(--hair); padding: .5rem 0;
  display: flex; justify-content: space-between; align-items: center; color: var(--quiet); }
button { font: inherit; color: inherit; background: none; border: 1px solid var(--hair); border-radius: 1rem;
  padding: .35rem .9rem; min-height: 2.5rem; cursor: pointer; }
.on-paper { display: none; }
.cover { min-height: 60vh; }
footer { color: var(--quiet); font-size: .92rem; padding-top: 1.5rem; padding-bottom: 2rem; }
@media (max-width: 30rem) {
  .picture.wide svg { max-width: none; width: 38rem; }
  dl.facts { grid-template-columns: 1fr; gap: 0; }
  dl.facts dt { margin-top: .55rem; font-size: .92rem; }
  .step dl.facts { grid-template-columns: 5.2rem 1fr; gap: .25rem .8rem; }
  .step dl.facts dt { margin-top: 0; }
}
@media print, (min-width: 44rem) {
  .step { display: grid; grid-template-columns: 17rem 1fr; column-gap: 1.8rem; align-items: start; }
  .step h2, .step h3, .step h4 { grid-column: 1 / -1; }
  .step figure { margin: 0; }
}
@media (min-width: 44rem) { .columns { display: grid; gap: 2rem; } }
@media print {
  :root { --ink: #000; --quiet: #444; --page: #fff; --card: PAPER; --hair: #bbb; --tint: #f4f4f4; }
  @page { margin: .5in; }
  body { font-size: 11pt; } main, footer { max-width: none; padding: 0; }
  nav, .progress { display: none; } .on-paper { display: block; }
  th.on-paper, td.on-paper { display: table-cell; }
  h2, h3, h4 { break-after: avoid; } figure, table, aside, .step, .together { break-inside: avoid; }
  .break { break-before: page; } .step.done { opacity: 1; } label.tick { min-height: 0; }
  .step { padding: .5rem 0 .3rem; } .step dl.facts { margin: .3rem 0; gap: .15rem 1rem; }
}
.mark { border: 1px solid currentColor; display: inline-block; vertical-align: bottom; margin-right: .3in;
  font-size: 9pt; text-align: center; box-sizing: border-box; }
""".replace("PAPER", PAPER)

SCRIPT = """
(function () {
  "use strict";
  var name = "stitchflip ticks: " + document.title + " / " + document.body.dataset.edition;
  var boxes = Array.prototype.slice.call(document.querySelectorAll("input[data-tick]"));
  var steps = boxes.filter(function (box) { return box.closest(".step"); });
  var line = document.getElementById("progress-words");
  var kept = {};
  try { kept = JSON.parse(localStorage.getItem(name)) || {}; } catch (error) { kept = {}; }
  function show() {
    steps.forEach(function (box) { box.closest(".step").classList.toggle("done", box.checked); });
    var done = steps.filter(function (box) { return box.checked; }).length;
    if (line) { line.textContent = done + " of " + steps.length + " steps done"; }
  }
  function keep() {
    boxes.forEach(function (box) {
      if (box.checked) { kept[box.dataset.tick] = 1; } else { delete kept[box.dataset.tick]; }
    });
    try { localStorage.setItem(name, JSON.stringify(kept)); } catch (error) { /* a private window keeps nothing */ }
    show();
  }
  boxes.forEach(function (box) {
    box.checked = Boolean(kept[box.dataset.tick]);
    box.addEventListener("change", keep);
  });
  var clear = document.getElementById("clear-ticks");
  if (clear) { clear.addEventListener("click", function () {
    if (window.confirm("Take all ticks off?")) { boxes.forEach(function (box) { box.checked = false; }); keep(); }
  }); }
  show();
}());
"""
