import { type SimulateReply, simulateRequest } from '../../../shared/ball/simulateRequest.ts';
import { decimals } from '../../../shared/units/numerals.ts';
import { covers, lieQualities, moistures } from '../../../shared/words/vocabulary.ts';
import type { Command } from '../command.ts';
import { readArguments } from '../readArguments.ts';
import { readJson } from '../readInput.ts';
import { writeJson } from '../writeJson.ts';

export const simulateCommand: Command = {
  name: 'simulate',
  summary: 'plays one shot, given as JSON on stdin, and says where it lands and stops',
  help: `swale simulate: plays one shot, given as JSON on stdin, and says where it lands and stops

Usage: swale simulate [--json] < SHOT

The ball starts at 0, 0 of a tilted plane; east and north are metres from there, bearings are degrees clockwise from
north. A key that is left out has the value shown; one that is not known is refused.

  {"ground": {"slopePct": 0, "downhillBearingDeg": 0, "cover": "green"},
   "stimpFt": 10, "firmness": 0.5, "moisture": "dry", "windMps": 0, "windFromDeg": 0,
   "heightAboveSeaM": 0, "temperatureC": 15,                    (left out: standard air at sea level)
   "hole": {"eastM": 0, "northM": 6, "flagstickIn": false},     (left out: no hole)
   "solve": {"carryM": 3.66} or {"totalM": 12},                 (left out: the speed is given)
   one of:
   "strike": {"loftDeg": 46, "bounceDeg": 8, "leanDeg": 0, "attackDeg": 0, "faceOpenDeg": 0, "lieSlopeDeg": 0,
              "lieAcrossDeg": 0, "clubheadMps": 9, "bearingDeg": 0, "lie": "clean", "clubKind": "lofted",
              "handed": "right"}
   "launch": {"speedMps": 8, "elevationDeg": 40, "bearingDeg": 0, "backspinRpm": 0, "spinAxisDeg": 0}
   "roll":   {"speedMps": 2, "bearingDeg": 0}}

  cover      ${covers.join(', ')}
  lie        ${lieQualities.join(', ')}
  moisture   ${moistures.join(', ')}
  firmness   0 soft to 1 firm
  air        by height and temperature; of one left out that of the standard atmosphere is taken
  slopes     lieSlopeDeg is uphill positive along the shot, lieAcrossDeg positive with the ball above the feet

With "solve" the clubhead speed (of a strike) or the ball's speed (of a launch or roll) is found, and reported too.

  --json     carryM, landing{eastM,northM}, apexM, bounces, runM, rest{eastM,northM}, totalM, holed, outcome,
             launch{speedMps,elevationDeg,backspinRpm}, and what was solved; every digit

Example:
  echo '{"strike": {"loftDeg": 46, "leanDeg": 5, "attackDeg": -4}, "solve": {"carryM": 3.66}}' | swale simulate
`,

  async run(args, io) {
    const { flags } = readArguments(args, { positionals: [], flags: ['json'] });
    const reply = simulateRequest(await readJson(io.stdin, 'stdin'));
    if (flags.has('json')) writeJson(io.stdout, reply);
    else io.stdout.write(replyText(reply));
  },
};

const endings: Readonly<Record<SimulateReply['outcome'], string>> = {
  atRest: 'stops',
  holed: 'holed',
  penaltyArea: 'in the penalty area',
  outOfBounds: 'out of bounds',
  stillRolling: 'the slope never lets it stop: still rolling',
};

function replyText(reply: SimulateReply): string {
  const metres = (value: number): string => `${decimals(value, 2)} m`;
  const at = ({ eastM, northM }: SimulateReply['rest']): string =>
    `${metres(eastM)} east, ${metres(northM)} north`;
  const { launch, clubheadMps, speedMps } = reply;
  const rows: readonly (readonly [string, string])[] = [
    ...(clubheadMps === undefined ? [] : [['clubhead', `${decimals(clubheadMps, 2)} m/s (solved)`] as const]),
    ...(speedMps === undefined ? [] : [['speed', `${decimals(speedMps, 2)} m/s (solved)`] as const]),
    [
      'launch',
      `${decimals(launch.speedMps, 2)} m/s at ${decimals(launch.elevationDeg, 1)}°, ${decimals(launch.backspinRpm, 0)} rpm of backspin`,
    ],
    ['carry', `${metres(reply.carryM)}, to ${at(reply.landing)}, ${metres(reply.apexM)} high`],
    ['bounces', String(reply.bounces)],
    ['run', metres(reply.runM)],
    ['end', `${endings[reply.outcome]} at ${at(reply.rest)}`],
    ['total', metres(reply.totalM)],
  ];
  return rows.map(([name, text]) => `${name.padEnd(10)}${text}\n`).join('');
}
