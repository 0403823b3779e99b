/** The colours of both themes as CSS custom properties: one source for the window and for drawings kept as files. */
const light =
  '--paper:#F1F3F0;--sheet:#FBFCFA;--well:#E5E9E6;--ink:#17212B;--ink-2:#414D58;--ink-3:#586571;--rule:#C9CFCC;' +
  '--rule-2:#75818A;--propose:#A3241B;--propose-wash:#F6E3DF;--select:#0A4C9A;--select-wash:#DEE9F5;' +
  '--doubt:#6B3F7A;--doubt-wash:#EEE6F1;--alert:#7A3E00;--alert-wash:#F6EBD9;--t-green:#F4F6EF;--t-fring:#E3E9DC;' +
  '--t-appr:#DCE4D6;--t-fair:#E4E9DC;--t-light:#E6E7DA;--t-heavy:#D6D8C4;--t-bare:#E9DFD0;--t-bunk:#F7EFD9;' +
  '--t-water:#D3E2EB;--t-ob:#E4E2E2;--t-path:#F0EDE8;--t-tree:#CBD3BF;--t-tee:#E9EEE2;--gp:#74816F;--gt:#66705D;' +
  '--water:#2F6788;--stip:#6E5A2E;--ctr:#5B5348;--idx:#3B342B;--fall:#2C3947;--halo:#FBFCFA;';
const dark =
  '--paper:#12181E;--sheet:#1A222A;--well:#26313B;--ink:#EFF2ED;--ink-2:#C0C9CE;--ink-3:#9EABB3;--rule:#35414B;' +
  '--rule-2:#7C8993;--propose:#FF9A86;--propose-wash:#41231F;--select:#8EC3FF;--select-wash:#18324F;' +
  '--doubt:#D6B1E6;--doubt-wash:#35263D;--alert:#F2BE73;--alert-wash:#3B2A10;--t-green:#1B242A;--t-fring:#263231;' +
  '--t-appr:#222D2C;--t-fair:#202A28;--t-light:#1E2624;--t-heavy:#18201C;--t-bare:#302B24;--t-bunk:#3A3527;' +
  '--t-water:#17303F;--t-ob:#22252A;--t-path:#2D3033;--t-tree:#26332B;--t-tee:#25302C;--gp:#6B7E76;--gt:#7A8A7C;' +
  '--water:#6FA9C9;--stip:#C9B47E;--ctr:#A79E8F;--idx:#D6CDBC;--fall:#D5DEE3;--halo:#12181E;';

/**
 * Slope classes 1-2, 2-3, 3-4 and over 4 %: the cividis map (Nuñez, Anderton & Renslow 2018; values as computed by
 * d3-scale-chromatic 3.1.1 at t .90 .72 .52 .32 by day and .16 .36 .58 .84 by night). Steeper stands further from paper.
 */
const slopeLight =
  '--slope-1:#EAD156;--slope-2:#B2A874;--slope-3:#837F76;--slope-4:#535A6E;' +
  '--slope-1-o:.36;--slope-2-o:.5;--slope-3-o:.58;--slope-4-o:.64;';
const slopeDark =
  '--slope-1:#1D3D6E;--slope-2:#5E616E;--slope-3:#908B78;--slope-4:#D7C363;' +
  '--slope-1-o:.46;--slope-2-o:.56;--slope-3-o:.46;--slope-4-o:.4;';

export const plateTokensCss = `:root{${light}${slopeLight}}[data-theme=dark]{${dark}${slopeDark}}`;
