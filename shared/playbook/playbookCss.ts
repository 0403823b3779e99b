import { sansFamily, serifFamily } from '../plate/style.ts';

export type SheetSize = 'a4' | 'letter';

export interface PlaybookFont {
  readonly family: 'Atkinson Hyperlegible Next' | 'Source Serif 4';
  readonly weight: 400 | 600 | 700;
  readonly style: 'normal' | 'italic';
  /** The woff2 file, base64: the page carries its own letters. */
  readonly woff2Base64: string;
}

const base64 = /^[A-Za-z0-9+/]*={0,2}$/;

export function fontFaces(fonts: readonly PlaybookFont[]): string {
  return fonts
    .map(({ family, weight, style, woff2Base64 }) => {
      if (!base64.test(woff2Base64)) throw new Error(`the font ${family} ${String(weight)} is not base64`);
      return (
        `@font-face{font-family:'${family}';font-weight:${String(weight)};font-style:${style};` +
        `src:url(data:font/woff2;base64,${woff2Base64}) format('woff2')}`
      );
    })
    .join('');
}

/** Black on white throughout: nothing depends on a tint. Sizes in pt so that paper keeps them: 8 least, 10 in tables. */
export const playbookCss = (sheet: SheetSize): string => `
@page guide{size:${sheet === 'a4' ? 'A4' : 'letter'};margin:13mm}
@page card{size:4.25in 7in;margin:0}
*{box-sizing:border-box}
html{font-family:${sansFamily};font-feature-settings:"tnum";font-size:10pt;line-height:1.3;color:#000;background:#fff}
body{margin:0}
h1,h2,h3,p,ul,ol,dl,dd{margin:0}
h1,h2,h3,.serif{font-family:${serifFamily};font-weight:600;line-height:1.12}
svg{display:block}
table{border-collapse:collapse;width:100%;font-size:10pt}
th{font-weight:400;text-align:left;vertical-align:bottom}
td,th{padding:1.5pt 4pt}
td:first-child,th:first-child{padding-left:0}
td:last-child,th:last-child{padding-right:0}
.n{text-align:right;white-space:nowrap}
.guide{page:guide;break-after:page;width:184mm}
.card{page:card;break-after:page;width:4.25in;height:7in;padding:.16in;overflow:hidden;position:relative}
.guide:last-child,.card:last-child{break-after:auto}
.head{display:flex;align-items:flex-end;gap:12pt;border-bottom:2pt solid #000;padding-bottom:4pt;margin-bottom:7pt}
.head .num{font:600 30pt/0.9 ${serifFamily}}
.head .who{flex:1}
.head h1,.head h2{font-size:17pt}
.head .flag{text-align:right}
.head .flag b{font-size:12.5pt}
.tag{display:inline-block;background:#000;color:#fff;font-weight:700;min-width:1.5em;text-align:center;padding:0 .3em;line-height:1.5;print-color-adjust:exact;-webkit-print-color-adjust:exact}
.ball{display:inline-block;border:1.3pt solid #000;border-radius:50%;font-weight:700;min-width:1.75em;height:1.75em;line-height:1.5em;text-align:center}
.shots thead th{border-bottom:1.2pt solid #000;font-size:9pt;line-height:1.15;padding-bottom:2.5pt}
.shots tbody{break-inside:avoid;border-bottom:.6pt solid #000}
.shots tbody tr:first-child td,.shots tbody tr:first-child th{padding-top:2pt;padding-bottom:0;vertical-align:middle}
.shots .ball{min-width:1.6em;height:1.6em;line-height:1.36em}
.shots th[scope=row]{width:10mm}
.shots .shot{white-space:nowrap;font-weight:700}
.shots .more td{font-size:8pt;line-height:1.24;padding:0 4pt 3pt}
.beside{display:flex;gap:9pt;align-items:flex-start;margin-bottom:4pt}
.beside svg{flex:none}
.balls td{border-bottom:.5pt solid #000;padding:1.4pt 3pt;font-size:9pt;line-height:1.15;vertical-align:middle}
.balls .ball{font-size:9pt}
.balls .sub{font-size:8pt}
.shots .more b{font-weight:600}
.yours{font-weight:600}
.cols{display:grid;grid-template-columns:1fr 1fr;gap:14pt;margin-top:8pt}
.cols h3{font-size:11.5pt;border-bottom:1.2pt solid #000;padding-bottom:2pt}
.cols th{font-size:9pt;border-bottom:.5pt solid #000}
.cols table td{border-bottom:.5pt solid #000;padding-top:2pt;padding-bottom:2pt;vertical-align:middle;line-height:1.2}
.cols .sub{font-size:8.5pt}
.small{font-size:8.5pt}
.front h1{font-size:30pt;margin:16mm 0 4pt}
.front .for{font-size:13pt;margin-bottom:12mm}
.front h2{font-size:14pt;margin:9mm 0 3mm;border-bottom:1.2pt solid #000;padding-bottom:2pt}
.front dl{display:grid;grid-template-columns:46mm 1fr;gap:3.2mm 6mm}
.front dt{font-weight:600}
.front dd .src{display:block;font-size:8.5pt}
.front li{margin:1.2mm 0}
.card .head{border-bottom-width:1.8pt;padding-bottom:3pt;margin-bottom:5pt;gap:7pt}
.card .head .num{font-size:25pt}
.card .head h2{font-size:14pt;white-space:nowrap;overflow:hidden;text-overflow:ellipsis}
.card .head .who{min-width:0}
.card .head .who p{font-size:8pt;line-height:1.25;display:-webkit-box;-webkit-box-orient:vertical;-webkit-line-clamp:2;overflow:hidden}
.card .head .flag{flex:none;white-space:nowrap}
.card .head .flag b{font-size:11pt}
.card .head .flag p{font-size:8pt}
.card table{margin-top:3pt;table-layout:fixed}
.card thead th{font-size:8pt;line-height:1.1;border-bottom:1pt solid #000;padding:0 2pt 1.5pt}
.card tbody td,.card tbody th{border-bottom:.6pt solid #000;padding:0 2pt;height:var(--row);white-space:nowrap}
.card tbody th{vertical-align:middle}
.card tbody .shot{font-weight:700;overflow:hidden;text-overflow:clip}
.card .ball{min-width:1.62em;height:1.62em;line-height:1.4em}
.card .key{font-size:8pt;line-height:1.25;margin-top:4pt}
.card .key .scale{float:right;white-space:nowrap;padding-left:6pt}
@media screen{
html{background:#d9dcd9}
body{padding:16px 0}
.guide,.card{background:#fff;margin:0 auto 20px;border:1px solid #000}
.guide{padding:13mm;width:210mm}
}
@media screen and (max-width:820px){.guide{zoom:.75}}
`;
