namespace AirColumn.Workshop.Sheets;

/// <summary>
/// How a build sheet looks: paper and ink by day, the same ink turned light by night, paper again in print. Text of drawings is set in their
/// own units, large where the page is narrow.
/// </summary>
internal static class SheetStyle
{
    public const string Css = """
        :root { color-scheme: light dark; --paper: #fbfaf5; --ink: #1c2523; --soft: #4d5a56; --line: #c3cac3; --brass: #7a5200; --sea: #0b5a5a; --bore: #d6e8e6; --heat: #a33b0a; --glow: #f6c9a8; --warn: #fff0cf; --warnink: #3d2a00; --card: #ffffff; }
        @media (prefers-color-scheme: dark) { :root { --paper: #12181a; --ink: #e8ede9; --soft: #b3c0bb; --line: #46524f; --brass: #f0c36a; --sea: #86d6cc; --bore: #1d3d3f; --heat: #ffa477; --glow: #6b3116; --warn: #352805; --warnink: #ffe9b8; --card: #1a2224; } }
        @media print { :root { color-scheme: light; --paper: #ffffff; --ink: #000000; --soft: #333333; --line: #999999; --brass: #5c3d00; --sea: #0b5a5a; --bore: #e2efee; --heat: #8f3207; --glow: #f8d8c2; --warn: #fff6e0; --warnink: #000000; --card: #ffffff; } }
        * { box-sizing: border-box; }
        body { margin: 0; background: var(--paper); color: var(--ink); font: 16px/1.5 'Atkinson Hyperlegible', system-ui, sans-serif; }
        main { max-width: 46rem; margin: 0 auto; padding: 12px 10px 40px; }
        h1, h2, p, li, figcaption { overflow-wrap: anywhere; }
        h1 { font-size: 1.5rem; line-height: 1.2; margin: 0 0 .6rem; }
        h2 { font-size: 1.15rem; margin: 2rem 0 .5rem; padding-left: .55rem; border-left: 5px solid var(--brass); line-height: 1.3; }
        p { margin: .45rem 0; }
        .kind { margin: 0; color: var(--brass); font-weight: 600; }
        .first { background: var(--card); border: 2px solid var(--sea); border-radius: 4px 22px 4px 22px; padding: .7rem .9rem; margin: .6rem 0 1rem; }
        .first p { margin: 0; }
        .cut { color: var(--sea); font-weight: 700; font-size: clamp(1.9rem, 10.5vw, 3.4rem); line-height: 1.1; }
        .cut .or { font-size: .45em; font-weight: 400; color: var(--soft); padding-right: .3em; }
        .cut span { white-space: nowrap; } .cut > span { display: inline-block; padding-right: .35em; }
        .q { white-space: nowrap; }
        .note, .source { color: var(--soft); font-size: .9rem; }
        .source { font-size: .8rem; }
        .remark { border: 1px solid var(--brass); border-left-width: 5px; padding: .35rem .6rem; }
        .caution { background: var(--warn); color: var(--warnink); border-left: 6px solid var(--heat); padding: .45rem .7rem .45rem 2.3rem; margin: .5rem 0; position: relative; }
        .caution::before { content: "!"; position: absolute; left: .6rem; top: .5rem; width: 1.25rem; height: 1.25rem; border-radius: 50%; background: var(--heat); color: var(--warn); font-weight: 700; line-height: 1.25rem; text-align: center; }
        .caution p { margin: 0; }
        .caution .source { color: var(--warnink); }
        table { border-collapse: collapse; width: 100%; font-size: .92rem; margin: .5rem 0; }
        caption { text-align: left; font-weight: 600; padding-bottom: .25rem; }
        th, td { text-align: left; vertical-align: top; padding: .3rem .6rem .3rem 0; border-bottom: 1px solid var(--line); font-weight: 400; }
        thead th { font-weight: 600; color: var(--soft); border-bottom: 2px solid var(--line); }
        @media (max-width: 30rem) { table { font-size: .84rem; } th, td { padding-right: .4rem; } }
        figure { margin: .8rem 0; }
        figcaption { color: var(--soft); font-size: .9rem; }
        ol.steps { list-style: none; margin: 0; padding: 0; counter-reset: step; }
        ol.steps > li { counter-increment: step; display: grid; grid-template-columns: 150px 1fr; gap: .8rem; padding: .7rem 0; border-bottom: 1px solid var(--line); }
        ol.steps > li > div > p:first-child::before { content: counter(step) ". "; font-weight: 700; color: var(--brass); }
        .uses { color: var(--sea); font-weight: 600; font-size: .9rem; }
        ul { margin: .4rem 0; padding-left: 1.2rem; }
        svg { display: block; width: 100%; height: auto; }
        svg.wide { max-width: 36rem; }
        svg.step { width: 150px; }
        svg text { font: 12px 'Atkinson Hyperlegible', system-ui, sans-serif; fill: var(--ink); } svg.wide text { stroke: var(--paper); stroke-width: 3px; paint-order: stroke; }
        @media (min-width: 40rem) { svg.wide text { font-size: 9px; } svg.wide text.strong { font-size: 10px; } }
        .bore { fill: var(--bore); stroke: var(--sea); stroke-width: 1.3; stroke-linejoin: round; }
        .wall { fill: var(--sea); stroke: var(--sea); stroke-width: .5; }
        .part { fill: var(--brass); stroke: var(--brass); stroke-width: .5; }
        .heat { fill: var(--glow); stroke: var(--heat); stroke-width: 1.3; }
        .mark { fill: none; stroke: var(--heat); stroke-width: 2; }
        .saw { fill: none; stroke: var(--heat); stroke-width: 1.6; stroke-linejoin: miter; }
        .gap { fill: var(--paper); stroke: none; }
        .edge, .size, .ruler, .arrow { fill: none; stroke: var(--ink); stroke-width: 1; }
        .axis { fill: none; stroke: var(--sea); stroke-width: .6; stroke-dasharray: 9 3 2 3; }
        .hole { fill: var(--paper); stroke: var(--sea); stroke-width: 1.2; } .hole.open { fill: var(--sea); }
        .lead { fill: none; stroke: var(--soft); stroke-width: .8; }
        .callout { fill: var(--paper); stroke: var(--sea); stroke-width: 1.2; }
        .grid { fill: none; stroke: var(--line); stroke-width: .7; }
        .harmonic { fill: none; stroke: var(--brass); stroke-width: 1; stroke-dasharray: 2 4; }
        .curve { fill: none; stroke: var(--sea); stroke-width: 1.5; }
        .peak { fill: var(--sea); }
        text.middle, text.strong { text-anchor: middle; }
        text.end { text-anchor: end; }
        text.strong { font-weight: 700; }
        @page { size: A4; margin: 11mm; }
        @media print {
          body { font-size: 8.6pt; line-height: 1.33; }
          main { max-width: none; padding: 0; }
          h1 { font-size: 15pt; } h2 { font-size: 10.5pt; margin: 3.2mm 0 1mm; break-after: avoid; }
          p { margin: .8mm 0; } .note, figcaption { font-size: 7.8pt; } .source { font-size: 7pt; } .cut { font-size: 26pt; } .cut .or { font-size: 12pt; }
          table { font-size: 8.2pt; margin: 1mm 0; } th, td { padding-top: .4mm; padding-bottom: .4mm; }
          .first { padding: 1.5mm 3mm; margin: 1mm 0 2mm; } .caution { padding-top: .8mm; padding-bottom: .8mm; margin: .8mm 0; } .cautions { display: grid; grid-template-columns: repeat(auto-fit, minmax(80mm, 1fr)); column-gap: 4mm; } .uses { font-size: 8pt; }
          svg.wide { width: 92mm; } svg.wide text { font-size: 10.5px; } svg.step { width: 34mm; }
          ol.steps { display: grid; grid-template-columns: 1fr 1fr; column-gap: 5mm; } ol.steps > li { grid-template-columns: 34mm 1fr; gap: 2mm; padding: 1mm 0; }
          figure { margin: 1mm 0; } figure, .caution, ol.steps > li, tr { break-inside: avoid; }
        }
        """;
}
