import { launchFromStrike } from '../../shared/ball/launchFromStrike.ts';
import type { Conditions, Launch, Lie, Strike } from '../../shared/ball/shot.ts';
import { chip, ordinaryDay, YARD_M } from './chipShots.ts';
import type { CheckGroup } from './row.ts';

const wedge: Strike = {
  clubKind: 'lofted',
  loftDeg: 56,
  bounceDeg: 10,
  leanDeg: 10,
  attackDeg: -5,
  faceOpenDeg: 0,
  clubheadMps: 24,
  bearingDeg: 0,
  handed: 'right',
};
const tight: Lie = { cover: 'fairway', quality: 'clean', alongDeg: 0, acrossDeg: 0 };
const from = (lie: Partial<Lie>, day: Partial<Conditions> = {}, strike: Partial<Strike> = {}): Launch =>
  launchFromStrike({ ...wedge, ...strike }, { ...tight, ...lie }, { ...ordinaryDay, ...day });

const group: CheckGroup = {
  title: 'Impact',
  measure() {
    const dry = from({});
    const wet = from({}, { moisture: 'wet' });
    const damp = from({}, { moisture: 'damp' });
    const seventy = chip({ loftDeg: 56, carryM: 70 * YARD_M, leanDeg: 10, attackDeg: -5 });
    const putt = from(
      { cover: 'green' },
      {},
      { clubKind: 'putter', loftDeg: 3, leanDeg: 0, attackDeg: 0, clubheadMps: 2 },
    );
    const level = from({});
    const uphill = from({ alongDeg: 4 });
    const above = from({ acrossDeg: 6 });
    const dynamicLoft = wedge.loftDeg - wedge.leanDeg;
    const spinLoft = dynamicLoft - wedge.attackDeg;
    const splash = from(
      { cover: 'bunker' },
      {},
      { leanDeg: 0, attackDeg: -6, faceOpenDeg: 12, clubheadMps: 20 },
    );
    const sand = 'typical splash (weak: no table of bunker launches is published)';
    const degreesLeft = ((540 - above.bearingDeg) % 360) - 180;
    return [
      {
        quantity: 'ball speed over putter speed',
        source: 'e-kjab.org archive 89',
        mark: 'found',
        expected: 1.6,
        ours: putt.speedMps / 2,
        tolerance: 0.05,
        unit: '',
      },
      {
        quantity: 'backspin of a 56-degree wedge carrying 70 yd, tight lie, delivered at 46 degrees',
        source: 'launch-monitor test of a short-game shop',
        mark: 'found',
        expected: [3573, 8910],
        ours: seventy.launch.backspinRpm,
        tolerance: 0,
        unit: 'rpm',
        note: 'the mean of the test is 7,130',
      },
      {
        quantity: 'the same with the tangential restitution of 0.2',
        source: 'independent model',
        mark: 'computed',
        expected: [7300, 8100],
        ours: seventy.launch.backspinRpm,
        tolerance: 150,
        unit: 'rpm',
        misfit:
          '7 % more: the delivery in the other computation is not on record, and our stronger drag asks for a faster ball',
      },
      {
        quantity: 'launch of the same',
        source: 'independent model',
        mark: 'computed',
        expected: [29, 31],
        ours: seventy.launch.elevationDeg,
        tolerance: 0.7,
        unit: 'degrees',
      },
      {
        quantity:
          'launch of the same against the line of the test (28 degrees at 6,000 rpm, 24 at high 8,000s)',
        source: 'launch-monitor test of a short-game shop',
        mark: 'found',
        expected: [25, 27],
        ours: seventy.launch.elevationDeg,
        tolerance: 1,
        unit: 'degrees',
        misfit:
          'about 3 degrees high at equal spin; the loft delivered in the test was not recorded, so this cannot be settled',
      },
      {
        quantity: 'share of spin kept from 2 in of rough',
        source: 'launch-monitor test of a short-game shop',
        mark: 'found',
        expected: [20, 50],
        ours:
          (100 * from({ cover: 'heavyRough' }).backspinRpm * dry.speedMps) /
          (dry.backspinRpm * from({ cover: 'heavyRough' }).speedMps),
        tolerance: 0,
        unit: '%',
        note: 'at equal ball speed',
      },
      {
        quantity: 'spin lost with a damp face',
        source: 'peterfieldgolf.co.uk, wet against dry',
        mark: 'found',
        expected: [10, 60],
        ours: 100 * (1 - damp.backspinRpm / dry.backspinRpm),
        tolerance: 0,
        unit: '%',
      },
      {
        quantity: 'spin lost with a wet face',
        source: 'the same',
        mark: 'found',
        expected: [10, 60],
        ours: 100 * (1 - wet.backspinRpm / dry.backspinRpm),
        tolerance: 5,
        unit: '%',
      },
      {
        quantity: 'launch gained with a wet face',
        source: 'the same: 5 on average, up to 9',
        mark: 'found',
        expected: [0, 9],
        ours: wet.elevationDeg - dry.elevationDeg,
        tolerance: 0.5,
        unit: 'degrees',
      },
      {
        quantity: 'friction launch, (dynamic loft - launch) / spin loft, dry',
        source: 'independent model; coaches give 30 to 40 (from memory)',
        mark: 'computed',
        expected: [23, 34],
        ours: (100 * (dynamicLoft - dry.elevationDeg)) / spinLoft,
        tolerance: 0,
        unit: '%',
      },
      {
        quantity: 'friction launch, wet',
        source: 'independent model',
        mark: 'computed',
        expected: 17,
        ours: (100 * (dynamicLoft - wet.elevationDeg)) / spinLoft,
        tolerance: 6,
        unit: '%',
        note: 'ours at a full 24 m/s',
      },
      {
        quantity: 'ball speed over clubhead speed of a splash, 56 degrees opened by 12',
        source: sand,
        mark: 'from memory',
        expected: [0.35, 0.45],
        ours: splash.speedMps / 20,
        tolerance: 0,
        unit: '',
        fittedHere: true,
      },
      {
        quantity: 'launch of the same',
        source: sand,
        mark: 'from memory',
        expected: [40, 50],
        ours: splash.elevationDeg,
        tolerance: 0,
        unit: 'degrees',
        fittedHere: true,
      },
      {
        quantity: 'backspin of the same',
        source: sand,
        mark: 'from memory',
        expected: [1000, 3500],
        ours: splash.backspinRpm,
        tolerance: 0,
        unit: 'rpm',
        fittedHere: true,
      },
      {
        quantity: 'launch gained on a lie of 4 degrees uphill',
        source: 'degree for degree, set up parallel to the slope',
        mark: 'from memory',
        expected: 4,
        ours: uphill.elevationDeg - level.elevationDeg,
        tolerance: 0.3,
        unit: 'degrees',
      },
      {
        quantity: 'start line pulled by the ball 6 degrees above the feet, 46 degrees of loft at impact',
        source: 'nearer the tilted face, atan(tan 46 sin 6) = 6.2 degrees off, than the path',
        mark: 'computed',
        expected: [3.1, 6.2],
        ours: degreesLeft,
        tolerance: 0,
        unit: 'degrees',
      },
    ];
  },
};
export default group;
