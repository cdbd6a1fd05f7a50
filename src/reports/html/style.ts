/**
 * The style of a report: one column on a screen, A4 on paper. Colours part by lightness first, so that grey print keeps
 * them; nothing is loaded from anywhere.
 *
 * @param footer what stands at the foot of every printed page, as the content of a CSS string.
 */
export function styleOf(kind: 'page' | 'full', footer: string, page: string): string {
  return `${BASE}
${kind === 'page' ? ONE_PAGE : FULL}
@page { size: A4; margin: ${kind === 'page' ? '11mm 14mm 14mm' : '16mm 16mm 18mm'};
  @bottom-left { content: "${footer}"; font: 8pt system-ui, sans-serif; color: #57606a; }
  @bottom-right { content: ${page}; font: 8pt system-ui, sans-serif; color: #57606a; } }
`;
}

/** Foreign text as the content of a CSS string: every sign but plain letters and digits by its number. */
export function cssString(text: string): string {
  return Array.from(text)
    .map((sign) =>
      /[A-Za-z0-9 ]/.test(sign) ? sign : `\\${sign.codePointAt(0)!.toString(16).padStart(6, '0')} `,
    )
    .join('');
}

const BASE = `:root { color-scheme: light; }
* { box-sizing: border-box; }
html { font: 16px/1.45 system-ui, sans-serif; color: #1f2328; background: #fff; -webkit-text-size-adjust: 100%; }
body { margin: 0 auto; padding: 1.25rem 1rem 2rem; max-width: 46rem; overflow-wrap: anywhere; }
header { border-bottom: 2px solid #1f2328; padding-bottom: .5rem; margin-bottom: 1rem; }
h1 { font-size: 1.5rem; line-height: 1.2; margin: 0; }
header p { margin: .25rem 0 0; color: #57606a; font-size: .875rem; }
h2 { font-size: 1.125rem; line-height: 1.3; margin: 1.75rem 0 .5rem; }
h3 { font-size: 1rem; margin: 1.25rem 0 .4rem; }
p { margin: .4rem 0; }
ul { margin: .4rem 0; padding-left: 1.2rem; }
li { margin: .2rem 0; }
.lead { font-size: 1.2rem; line-height: 1.35; font-weight: 600; }
.small, .below { font-size: .8125rem; color: #57606a; }
.stamp { border-left: .5rem solid #57606a; padding: .35rem .75rem; margin: .6rem 0; background: #f6f8fa; font-weight: 600; }
.stamp.pass { border-color: #0b5394; }
.stamp.fail { border-color: #9a3412; border-left-style: double; }
.scroll { overflow-x: auto; margin: .5rem 0; }
table { border-collapse: collapse; width: 100%; font-size: .875rem; font-variant-numeric: tabular-nums; }
th, td { text-align: left; vertical-align: top; padding: .3rem .75rem .3rem 0; border-bottom: 1px solid #d0d7de; }
th { font-weight: 600; border-bottom-color: #57606a; overflow-wrap: normal; }
th:last-child, td:last-child { padding-right: 0; }
.right { text-align: right; padding-right: 1.25rem; }
table.dense { font-size: .8125rem; } table.dense .right { padding-right: .5rem; }
td.whole { white-space: nowrap; }
td.pass { color: #0b5394; font-weight: 600; }
td.fail { color: #9a3412; font-weight: 700; }
td.other { font-weight: 600; }
.hash { font-family: ui-monospace, monospace; font-size: .6875rem; }
dl { display: grid; grid-template-columns: minmax(7rem, 13rem) 1fr; gap: .25rem 1rem; margin: .5rem 0; font-size: .9375rem; }
dt { color: #57606a; }
dd { margin: 0; }
.missing { font-style: italic; color: #9a3412; }
figure { margin: .75rem 0; }
figure svg { display: block; width: 100%; height: auto; max-width: 41rem; }
figcaption { font-size: .875rem; color: #57606a; margin-top: .2rem; }
figcaption b { color: #1f2328; }
.photos { display: grid; grid-template-columns: repeat(auto-fill, minmax(14rem, 1fr)); gap: 1rem; }
.photos figure { margin: 0; }
.photos img { display: block; max-width: 100%; max-height: 24rem; object-fit: contain; border: 1px solid #d0d7de; }
.end { margin-top: 2rem; padding-top: .5rem; border-top: 2px solid #1f2328; text-align: center; font-weight: 600; }
@media (max-width: 30rem) { dl { grid-template-columns: 1fr; gap: 0; } dd { margin-bottom: .4rem; } table { font-size: .8125rem; }
  table.wide, table.wide tbody, table.wide tr, table.wide td { display: block; } table.wide thead { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }
  table.wide tr { border-bottom: 1px solid #57606a; padding: .3rem 0; } table.wide td { border: 0; padding: .05rem 0; text-align: left; } table.wide td[data-head]:not([data-head=""])::before { content: attr(data-head) ": "; font-weight: 400; color: #57606a; } }
@media print { html { font-size: 10.5pt; } body { max-width: none; padding: 0; } h2, h3 { break-after: avoid; } figure, tr, .stamp { break-inside: avoid; } thead { display: table-header-group; } .scroll { overflow: visible; } a { color: inherit; } }`;

const FULL = `h2 { border-top: 1px solid #d0d7de; padding-top: .75rem; }
main > h2:first-child { border-top: 0; padding-top: 0; margin-top: 1rem; }`;

const ONE_PAGE = `.columns { display: grid; grid-template-columns: 1fr 1fr; gap: 0 1.75rem; }
.columns.wide { grid-template-columns: 2fr 1fr; }
.columns > * { min-width: 0; }
h2 { margin: 1rem 0 .3rem; font-size: 1rem; }
@media (max-width: 40rem) { .columns, .columns.wide { grid-template-columns: 1fr; } }
@media print { html { font-size: 9pt; line-height: 1.32; } header { padding-bottom: .25rem; margin-bottom: .4rem; } h1 { font-size: 1.35rem; } h2 { margin: .55rem 0 .15rem; } p, ul, .scroll, .stamp { margin: .2rem 0; } li { margin: .05rem 0; } .lead { font-size: 1.15rem; } figure { margin: .3rem 0; } figure svg { max-width: 140mm; max-height: 92mm; } body:has(tbody tr:nth-child(5)) figure svg { max-height: 66mm; } th, td { padding: .12rem .6rem .12rem 0; } figcaption { display: none; } .photos figcaption { display: block; } .photos img { max-height: 30mm; } .end { margin-top: .5rem; padding-top: .2rem; } .columns { grid-template-columns: 1fr 1fr; } .columns.wide { grid-template-columns: 2fr 1fr; } .columns .photos { grid-template-columns: 1fr; gap: .3rem; } body:has(tbody tr:nth-child(5)) .photos img { max-height: 22mm; } html:has(tbody tr:nth-child(5)) { font-size: 8.2pt; } }`;
