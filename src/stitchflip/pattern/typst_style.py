"""How our paper looks, in Typst's own language: type, color, the stitched line, and the size of the field.

One place holds every decision about looks. Functions here take finished words and pictures; what is said and
in which order is not decided here. Both papers share one field of 7½ × 10 in, so that a page breaks at the
same place on letter and on A4.
"""

from __future__ import annotations

FIELD_WIDE_IN = 7.5
FIELD_HIGH_IN = 10.0
FOOT_HIGH_IN = 0.3
"""Part of the field that the running foot takes."""

STYLE = r"""
#let BOOK = ("Libertinus Serif",)
#let ink = rgb("#22262b")
#let quiet = rgb("#5d636b")
#let hair = rgb("#cfc9bf")
#let thread = rgb("#a8482a")
#let tint = rgb("#f7f4ef")
#let stitched(color: thread, thick: 0.9pt) = pdf.artifact(
  line(length: 100%, stroke: (paint: color, thickness: thick, dash: (5pt, 3pt), cap: "round")))
#let hairline = pdf.artifact(line(length: 100%, stroke: 0.5pt + hair))

#let su(b) = text(weight: "bold", b)
#let mu(b) = text(fill: quiet, b)
#let mk(letter, color) = box({
  box(width: 0.72em, height: 0.72em, fill: color, stroke: 0.5pt + ink, radius: 1pt, baseline: 0.05em)
  h(0.28em)
  text(weight: "bold", letter)
})

#let pp(b) = par(b)
#let lead(b) = block(above: 1em, below: 1.1em, text(font: BOOK, size: 1.14em, style: "italic", fill: quiet, b))
#let small(b) = text(size: 0.86em, fill: quiet, par(b))

#let h1(b) = heading(level: 1, b)
#let h2(b) = heading(level: 2, b)
#let h3(b) = heading(level: 3, b)

#let pic(data, wide, alt) = image(bytes(data), format: "svg", width: wide, alt: alt)
#let fig(data, wide, alt, caption) = block(breakable: false, width: 100%, above: 1.1em, below: 1.2em,
  align(center, {
    pic(data, wide, alt)
    if caption != none { v(0.35em, weak: true); text(size: 0.9em, fill: quiet, caption) }
  }))

#let tab(title, columns, aligns, head, rows, total, breaks) = block(breakable: breaks, width: 100%,
  above: 1em, below: 1.2em, {
  if title != none { block(below: 0.55em, sticky: true, text(weight: "bold", title)) }
  set text(number-width: "tabular")
  set par(justify: false, leading: 0.45em)
  table(
    columns: columns, align: aligns, inset: (x: 0.42em, y: 0.36em),
    stroke: (x, y) => (bottom: if y == 0 { 0.8pt + ink } else { 0.5pt + hair }),
    table.header(..head.map(b => text(size: 0.86em, fill: quiet, b))),
    ..rows,
    ..total.map(b => table.cell(fill: tint, text(weight: "bold", b))),
  )
})
#let swatch(wide, high) = rect(width: wide, height: high, radius: 2pt,
  stroke: (paint: quiet, thickness: 0.6pt, dash: (3pt, 2pt)))

#let facts(..rows) = {
  set par(justify: false)
  grid(columns: (auto, 1fr), column-gutter: 1em, row-gutter: 0.75em * AIR,
    ..rows.pos().map(((label, b)) => (text(fill: quiet, style: "italic", label), b)).flatten())
}

#let asides = (
  caution: (bar: thread, fill: rgb("#fbf1ec")),
  tip: (bar: rgb("#3f6b62"), fill: rgb("#eff5f2")),
  look: (bar: rgb("#8a6a12"), fill: rgb("#faf5e4")),
)
#let aside(kind, title, body) = block(breakable: false, width: 100%, above: 1.1em, below: 1.2em,
  fill: asides.at(kind).fill, inset: (left: 0.9em, right: 0.9em, y: 0.75em), radius: (right: 3pt),
  stroke: (left: (paint: asides.at(kind).bar, thickness: 2pt, dash: (6pt, 3pt), cap: "round")), {
  block(below: 0.55em, sticky: true, text(weight: "bold", fill: asides.at(kind).bar, title))
  body
})

#let numbered(..items) = enum(numbering: n => text(fill: thread, weight: "bold", str(n)), body-indent: 0.7em,
  spacing: 0.62em, ..items.pos())
#let dots(..items) = list(..items.pos())
#let ticks(..items) = {
  set list(marker: box(width: 0.72em, height: 0.72em, stroke: 0.7pt + ink, radius: 1pt, baseline: 0.04em),
    body-indent: 0.6em, spacing: 0.62em)
  list(..items.pos())
}

#let side-by-side(shares, ..columns) = block(above: 1.1em * AIR, width: 100%, grid(
  columns: shares, column-gutter: 0.3in, ..columns.pos()))
#let keep(gap, b) = block(breakable: false, width: 100%, above: gap, b)

#let number-badge(b) = box(inset: (x: 0.42em), outset: (y: 0.26em), radius: 0.7em, stroke: 0.8pt + thread,
  text(fill: thread, weight: "bold", size: 0.95em, b))
#let dotted-line = pdf.artifact(
  box(width: 100%, line(length: 100%, stroke: (paint: quiet, thickness: 0.5pt, dash: "dotted"))))
#let write-on(..labels) = block(above: 1.3em, width: 100%, grid(
  columns: if labels.pos().len() > 3 { (auto, 1fr, auto, 1fr) } else { (auto, 1fr) },
  column-gutter: 0.6em, row-gutter: 1.15em, align: bottom,
  ..labels.pos().map(label => (text(fill: quiet, label), dotted-line)).flatten()))

#let step(picture-wide, picture, number, title, do, notes, after) = block(breakable: false, width: 100%,
  above: 0.16in, below: 0.16in, {
  grid(columns: (picture-wide, 1fr), column-gutter: 0.3in, align: (center + top, left + top), picture, {
    set par(justify: false, leading: 0.5em)
    block(below: 0.6em, { number-badge(number); h(0.5em); text(size: 1.08em, weight: "bold", title) })
    block(below: 0.75em, do)
    grid(columns: (auto, 1fr), column-gutter: 0.8em, row-gutter: 0.55em,
      ..notes.map(((label, b)) => (text(fill: quiet, style: "italic", label), b)).flatten())
    for line in after { block(above: 0.65em, below: 0.5em, text(fill: rgb("#2f574f"), line)) }
    block(above: 1.1em, write-on("My note"))
  })
  v(0.14in, weak: true)
  hairline
})

#let bar(long, tick, count, label) = {
  box(width: long, height: 0.16in, {
    place(rect(width: long, height: 0.09in, stroke: 0.6pt + ink))
    for n in range(count) { if calc.even(n) { place(dx: n * tick, rect(width: tick, height: 0.09in, fill: ink)) } }
  })
  linebreak()
  text(size: 0.82em, fill: quiet, label)
}
#let square-mark(side, label) = box(width: side, height: side, stroke: 0.6pt + ink,
  align(center + horizon, text(size: 0.82em, label)))
#let marks-inch = (square-mark(1in, "1 in"), bar(4in, 1in, 4, "4 in"))
#let marks-cm = (square-mark(2cm, "2 cm"), bar(10cm, 2cm, 5, "10 cm"))
#let check-marks(first, second, alt) = figure(alt: alt, kind: "check marks", supplement: none, outlined: false,
  grid(columns: (auto, auto, 1fr), column-gutter: 0.26in, align: left + bottom, first.at(0), second.at(0),
    { first.at(1); v(0.12in, weak: true); second.at(1) }))

#let cover(picture, name, about, said, maker) = {
  v(0.5in)
  block(below: 0.24in, heading(level: 1, text(size: 42pt, name)))
  if about != none {
    block(below: 0.3in, width: 5.6in, text(font: BOOK, size: 14pt, style: "italic", fill: quiet, about))
  }
  stitched()
  v(1fr)
  align(center, picture)
  v(1.2fr)
  said
  v(0.4in)
  write-on(maker)
  v(0.15in)
}
"""
"""Functions and colors; before it the writer sets the document, the page and the type size."""

SETTINGS = r"""
#set text(font: BODY, lang: LANG, region: REGION, fill: ink, hyphenate: false,
  number-type: "lining")
#set par(justify: false, leading: 0.58em, spacing: 0.85em)
#set list(marker: text(fill: thread, "–"), spacing: 0.6em)
#show regex("\d+/(16|32|64)"): set text(features: ("frac",))
#show heading.where(level: 1): it => block(above: 0pt, below: 0.55em,
  text(font: BOOK, size: 2em, weight: "regular", it.body))
#show heading.where(level: 2): it => block(above: 1.7em, below: 0.9em, sticky: true, {
  text(font: BOOK, size: 1.45em, weight: "semibold", it.body)
  v(0.42em, weak: true)
  stitched()
})
#show heading.where(level: 3): it => block(above: 1.25em, below: 0.6em, sticky: true,
  text(font: BOOK, size: 1.16em, weight: "semibold", it.body))
"""
"""Set and show rules, applied after the functions are known."""
