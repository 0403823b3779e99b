import {
  chance,
  distance,
  leave,
  landing as landingOf,
  slope,
  strokes as strokesText,
  withUnit,
} from '../units/format.ts';
import type { UnitsPreference } from '../units/preference.ts';
import { coverWords } from '../words/coverWords.ts';
import { type Cover, covers, type Technique, techniques } from '../words/vocabulary.ts';
import { clubAfterShot, shotName } from './optionName.ts';
import type { Reason } from './plan.ts';

/** Things in the way that have a name of their own. */
const featureWords: Readonly<Record<string, string | undefined>> = {
  swale: 'the swale',
  bank: 'the bank',
  bunker: 'the bunker',
  lip: 'the lip',
  tree: 'the tree',
  wall: 'the wall',
};

const grainText: Readonly<Record<string, string | undefined>> = {
  with: 'It rolls with the grain: the ball runs on.',
  against: 'It rolls into the grain: the ball stops sooner.',
  toRight: 'The grain takes it to the right as it slows.',
  toLeft: 'The grain takes it to the left as it slows.',
};

const isCover = (word: string): word is Cover => (covers as readonly string[]).includes(word);
const isTechnique = (word: string): word is Technique => (techniques as readonly string[]).includes(word);

/** A reason in plain trade words: one or two short sentences. An unknown kind comes out as nothing. */
export function reasonText(reason: Reason, units: UnitsPreference): string {
  const number = (name: string): number => {
    const value = reason.values[name];
    return typeof value === 'number' ? value : NaN;
  };
  const word = (name: string): string => String(reason.values[name] ?? '');
  const ground = (name: string): string => {
    const value = word(name);
    return isCover(value) ? coverWords[value] : value;
  };
  const technique = (): string => {
    const value = word('technique');
    return isTechnique(value) ? shotName(value) : value;
  };
  const far = (name: string): string => withUnit(distance(number(name), units));
  const close = (name: string): string => withUnit(leave(number(name), units));
  const share = (name: string): string => withUnit(chance(number(name)));
  const cost = (name: string): string => strokesText(Math.abs(number(name)));
  /** Left out where it would print as nothing. */
  const bracketed = (name: string): string => (Number(cost(name)) === 0 ? '' : ` (${cost(name)})`);
  const falls = (): string => {
    const pct = number('slopePct');
    if (Math.abs(pct) < 0.5) return 'level ground';
    return pct > 0 ? `ground rising ${withUnit(slope(pct))}` : `ground falling ${withUnit(slope(-pct))} away`;
  };

  switch (reason.kind) {
    case 'savesStrokes':
      return `It saves ${cost('savedStrokes')} strokes over ${word('name')}, the next best.`;
    case 'savesNextToNothing':
      return `There is next to nothing between it and ${word('name')}, the next best${bracketed('savedStrokes')}.`;
    case 'bestButLevel':
      return `${word('name')} is level with it: these shots cannot tell them apart.`;
    case 'simplerWithinMargin':
      return `It costs ${cost('costStrokes')} more than ${word('name')}, within your margin of ${cost('marginStrokes')}, and it is the simpler shot.`;
    case 'levelAndSimpler':
      return `It is level with ${word('name')} and is the simpler shot.`;
    case 'moreLoftForLittle':
      return `There is next to nothing between it and ${word('name')}${bracketed('costStrokes')}; with more loft it stops sooner, and less hangs on the run.`;
    case 'onlyShot':
      return 'It is the only shot for this lie with this bag.';
    case 'nearestClub':
      return `No club in the bag suits the ${technique()}: the ${word('clubName')} comes nearest.`;
    case 'notForThisLie':
      return `No shot with this bag suits this lie: the ${technique()} is what is left.`;
    case 'paceInGrass':
      return `The ball loses ${share('lostShare')} of its pace in ${far('lengthM')} of ${ground('cover')}.`;
    case 'staysDown':
      return `It stays on the ground: half of your strikes finish within ${close('medianLeaveM')}.`;
    case 'grain':
      return grainText[word('how')] ?? '';
    case 'clearsAndLands': {
      const over = featureWords[word('cover')] ?? `${far('clearedM')} of ${ground('cover')}`;
      return `It clears ${over} and lands ${fromEdge(number('onM'), units)} on ${falls()}.`;
    }
    case 'landsShort': {
      const runs = `${number('slopePct') < 0.5 ? 'runs on over' : 'runs up on'} ${falls()}`;
      return number('shortM') < 0.45
        ? `It lands at the edge and ${runs}.`
        : `It lands ${fromEdge(-number('shortM'), units)} in the ${ground('cover')}, and ${runs}.`;
    }
    case 'landsPast':
      return `It lands ${far('pastM')} past the back of the green.`;
    case 'flightAndRun':
      return `It flies ${share('carryShare')} of the way and runs ${far('runM')}.`;
    case 'liePlaysLike':
      return number('alongDeg') > 0
        ? `Out of this upslope the ${clubAfterShot(word('clubName'))} plays like ${degrees(number('playsLikeDeg'))}: higher and shorter.`
        : `Off this downslope the ${clubAfterShot(word('clubName'))} plays like ${degrees(number('playsLikeDeg'))}: lower, and it runs.`;
    case 'meantPast':
      return `Meant to stop ${far('lengthM')} past the flag: a shorter one costs more here.`;
    case 'meantShort':
      return `Meant to stop ${far('lengthM')} short of the flag: past it costs more here.`;
    case 'mishits':
      return `${share('share')} of your strikes from this lie are heavy or thin.`;
    case 'stillLearning':
      return `You are still learning the ${technique()}: it must save ${cost('marginStrokes')} before it counts.`;
    case 'harderForLittle':
      return `It would save only ${cost('savedStrokes')} over ${word('name')}, less than your margin of ${cost('marginStrokes')}, and asks for more.`;
    case 'lessLoftForLittle':
      return `It saves next to nothing over ${word('name')}${bracketed('savedStrokes')} and runs further.`;
    case 'learningForLittle':
      return `It saves ${cost('savedStrokes')} over ${word('name')}, not enough to choose it.`;
    case 'levelWith':
      return `It is level with ${word('name')}: these shots cannot tell them apart.`;
    case 'costsStrokes':
      return `It costs ${cost('costStrokes')} strokes more than ${word('name')}.`;
    case 'moreTrouble':
      return `${share('share')} of your strikes ${troubleWords(word('what'))}, against ${share('chosenShare')}.`;
    case 'runsPastFromSameSpot':
      return `From the same landing spot as ${word('name')} it would run ${far('lengthM')} farther.`;
    case 'stopsShortFromSameSpot':
      return `From the same landing spot as ${word('name')} it would stop ${far('lengthM')} shorter.`;
    case 'leavesMore':
      return `Half of your strikes finish within ${close('medianLeaveM')}, against ${close('chosenLeaveM')}.`;
    case 'missesGreen':
      return `${share('share')} of your strikes stay off the green, against ${share('chosenShare')}.`;
    case 'fewerUpAndDown':
      return `You get up and down ${share('share')} of the time, against ${share('chosenShare')}.`;
    case 'safePrice':
      return number('costStrokes') < 0.005
        ? `The safe way out costs nothing here: ${share('share')} trouble.`
        : number('chosenShare') - number('share') < 0.005
          ? `As the safe way out it costs ${cost('costStrokes')}: ${share('share')} trouble, as with the advice.`
          : `The safe way out costs ${cost('costStrokes')} and takes trouble from ${share('chosenShare')} to ${share('share')}.`;
    case 'alsoSafe':
      return number('share') < 0.1
        ? `It is the safe way out as well: ${share('share')} trouble.`
        : number('others') === 0
          ? `No other shot is at hand: ${share('share')} trouble.`
          : `Nothing else here keeps clearer of trouble: ${share('share')}.`;
    case 'clearsChance':
      return `${share('share')} of your strikes clear ${featureWords[word('what')] ?? word('what')}.`;
    case 'safeLeave':
      return `It leaves about ${close('medianLeaveM')}; ${share('offGreenShare')} stay off the green.`;
    case 'notInRepertoire':
      return `You have marked the ${technique()} as not yours.`;
    case 'noClub':
      return `No club in the bag suits the ${technique()}.`;
    case 'lieForbids':
      return `This lie does not allow the ${technique()}.`;
    case 'cannotStop':
      return word('clubName') === ''
        ? `No ${technique()} can stop near the flag from here.`
        : `The ${clubAfterShot(word('clubName'))} ${technique()} cannot stop near the flag from here.`;
    case 'cannotReach':
      return word('clubName') === ''
        ? `No ${technique()} reaches the flag from here.`
        : `The ${clubAfterShot(word('clubName'))} ${technique()} does not reach the flag from here.`;
    case 'aimedAway':
      return word('clubName') === ''
        ? `A ${technique()} could only be played far off the flag.`
        : `The ${clubAfterShot(word('clubName'))} ${technique()} could only be played far off the flag.`;
    case 'doesNotReach':
      return `It does not get to the flag: as meant it stops ${far('lengthM')} short.`;
    case 'runsPast':
      return `Nothing holds it at the flag: as meant it runs ${far('lengthM')} past.`;
    case 'blocked':
      return word('clubName') === ''
        ? `No ${technique()} gets past what stands in the way.`
        : `The ${clubAfterShot(word('clubName'))} ${technique()} does not get past what stands in the way.`;
    case 'otherName':
      return isTechnique(word('technique')) && word('technique') === 'pitch'
        ? 'From here a pitch would be so short or low that it is a chip.'
        : `From here a ${technique()} would have to fly so far that it is a pitch.`;
    default:
      return '';
  }
}

const degrees = (value: number): string => `${String(Math.round(value))}°`;

/** "2 paces on,", "½ pace short,", "at the edge": as the spot is told everywhere else. */
function fromEdge(onM: number, units: UnitsPreference): string {
  const [number = '', side] = landingOf(onM, units).text.split(' ');
  if (side === undefined) return 'at the edge';
  return `${number} ${number === '1' || number === '½' ? 'pace' : 'paces'} ${side},`;
}

function troubleWords(what: string): string {
  switch (what) {
    case 'bunker':
      return 'end in sand';
    case 'penaltyArea':
      return 'end in the penalty area';
    case 'outOfBounds':
      return 'end out of bounds';
    case 'neverStops':
      return 'never come to rest';
    case 'obstructed':
      return 'catch something on the way';
    default:
      return 'end in trouble';
  }
}
