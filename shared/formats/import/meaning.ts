import { type AreaKind, areaKinds } from '../../words/vocabulary.ts';
import type { MapFeature } from './mapFeature.ts';
import { namedKind } from './namedKind.ts';

/** What a feature is to an atlas. */
export type Meaning =
  | { readonly as: 'area'; readonly kind: AreaKind; readonly how: string; readonly from: string }
  | { readonly as: 'unknownArea' }
  | { readonly as: 'hole' }
  | { readonly as: 'path' }
  | { readonly as: 'tree' }
  | { readonly as: 'line'; readonly kind: 'tierEdge' | 'ridge' | 'contour' | 'wall' }
  | { readonly as: 'flag' | 'ball'; readonly hole: string | null; readonly label: string | null }
  | { readonly as: 'height'; readonly heightM: number; readonly accuracyM: number | null }
  | { readonly as: 'leftOut'; readonly what: string; readonly why: string };

const golfAreas: Readonly<Record<string, AreaKind>> = {
  green: 'green',
  fairway: 'fairway',
  rough: 'lightRough',
  bunker: 'bunker',
  tee: 'tee',
  water_hazard: 'penaltyArea',
  lateral_water_hazard: 'penaltyArea',
  path: 'path',
  cartpath: 'path',
};
const naturalAreas: Readonly<Record<string, AreaKind>> = {
  water: 'penaltyArea',
  wood: 'tree',
  tree_group: 'tree',
  scrub: 'heavyRough',
  heath: 'heavyRough',
  sand: 'bare',
};
const golfLeftOut: Readonly<Record<string, string>> = {
  pin: 'Flags move daily, so the map cannot know where they stand: set hole locations yourself.',
  clubhouse: 'A building is nothing a ball is played from.',
  driving_range: 'Only its greens and bunkers are taken.',
  practice: 'Only its greens and bunkers are taken.',
};

/** From tags first (OpenStreetMap's, then our own properties), then from the words of the name. */
export function meaningOf(feature: MapFeature): Meaning {
  const { tags, geometry, name } = feature;
  const golf = tags.get('golf') ?? '';
  if (golf === 'hole')
    return geometry.kind === 'line'
      ? { as: 'hole' }
      : { as: 'leftOut', what: 'holes', why: 'A hole is a line from the tee to the flag.' };
  const why = member(golfLeftOut, golf);
  if (why !== undefined) return { as: 'leftOut', what: plural(golf), why };
  const own = tags.get('kind') ?? '';
  const kind =
    member(golfAreas, golf) ??
    areaKinds.find((one) => one === own) ??
    member(naturalAreas, tags.get('natural') ?? '');
  if (geometry.kind === 'areas') return areaMeaning(feature, kind);
  if (geometry.kind === 'line') return lineMeaning(feature, kind);
  const height = Number(tags.get('height_m') ?? NaN);
  if (Number.isFinite(height)) {
    const accuracy = Number(tags.get('accuracy_m') ?? NaN);
    return { as: 'height', heightM: height, accuracyM: accuracy > 0 ? accuracy : null };
  }
  if (tags.get('natural') === 'tree') return { as: 'tree' };
  if (golf !== '')
    return { as: 'leftOut', what: `points tagged golf=${golf}`, why: 'A point has no outline.' };
  return pointMeaning(name, tags);
}

function areaMeaning({ tags, name }: MapFeature, tagged: AreaKind | undefined): Meaning {
  if (tagged !== undefined) return { as: 'area', kind: tagged, ...howTagged(tags, tagged) };
  if (tags.has('golf')) return { as: 'unknownArea' };
  if (tags.has('natural') || tags.has('leisure') || tags.has('waterway') || tags.has('barrier'))
    return {
      as: 'leftOut',
      what: 'other outlines of the map',
      why: 'They are no ground that changes how a ball is played.',
    };
  const named = namedKind(name) ?? namedKind(tags.get('folder') ?? '');
  return named === null
    ? { as: 'unknownArea' }
    : {
        as: 'area',
        kind: named,
        how: 'Outlines are sorted by the words of their names or folders.',
        from: 'the name',
      };
}

function lineMeaning({ tags, name }: MapFeature, tagged: AreaKind | undefined): Meaning {
  const own = tags.get('kind') ?? '';
  if (own === 'tierEdge' || own === 'ridge' || own === 'contour' || own === 'wall')
    return { as: 'line', kind: own };
  if (tagged === 'path' || tags.has('golf_cart')) return { as: 'path' };
  if (tags.has('golf') || tags.has('natural') || tags.has('leisure'))
    return { as: 'leftOut', what: 'open lines', why: 'An area needs a closed outline.' };
  if (tags.has('waterway'))
    return {
      as: 'leftOut',
      what: 'streams drawn as lines',
      why: 'A penalty area needs an outline: trace its edge.',
    };
  if (tags.get('barrier') === 'wall') return { as: 'line', kind: 'wall' };
  if (tags.has('barrier'))
    return { as: 'leftOut', what: 'fences and hedges', why: 'Only walls and trees stop a ball in an atlas.' };
  if (/\b(tier|step)\b/i.test(name)) return { as: 'line', kind: 'tierEdge' };
  if (/\bridge\b/i.test(name)) return { as: 'line', kind: 'ridge' };
  if (/\bwall\b/i.test(name)) return { as: 'line', kind: 'wall' };
  const named = namedKind(name) ?? namedKind(tags.get('folder') ?? '') ?? tagged ?? null;
  return named === null
    ? { as: 'unknownArea' }
    : {
        as: 'area',
        kind: named,
        how: 'Walked outlines are sorted by the words of their names.',
        from: 'the name',
      };
}

function pointMeaning(name: string, tags: ReadonlyMap<string, string>): Meaning {
  if (tags.has('barrier') || tags.has('leisure') || tags.has('natural') || tags.has('golf_cart'))
    return { as: 'leftOut', what: 'other points of the map', why: 'They are no ground that changes a shot.' };
  const hole = tags.get('hole') ?? /\b(?:hole|station)\s+([\w.-]{1,12})/i.exec(name)?.[1] ?? null;
  const label = (word: string): string | null =>
    tags.get('label') ?? new RegExp(`\\b(?:${word})\\s+([\\w.-]{1,12})`, 'i').exec(name)?.[1] ?? null;
  const said = tags.get('record') ?? '';
  if (said === 'holeLocation' || (said === '' && /\b(flag|pin|cup|hole location)\b/i.test(name)))
    return { as: 'flag', hole, label: label('flag|pin|cup|location') };
  return { as: 'ball', hole, label: label('ball|spot|position') };
}

/** Why outlines so tagged are of that kind, and the tag itself. */
function howTagged(tags: ReadonlyMap<string, string>, kind: AreaKind): { how: string; from: string } {
  const golf = tags.get('golf') ?? '';
  const tag = (key: string): string => `${key}=${tags.get(key) ?? ''}`;
  if (golf === 'rough')
    return { how: 'golf=rough comes in as light rough: change what is heavy.', from: tag('golf') };
  if (golf.endsWith('water_hazard'))
    return {
      how: 'golf=water_hazard and lateral_water_hazard are penalty areas today.',
      from: tag('golf'),
    };
  const key = golf !== '' ? 'golf' : tags.has('natural') ? 'natural' : 'kind';
  return key === 'kind'
    ? { how: `Outlines whose kind says ${kind}.`, from: 'its kind' }
    : { how: `Outlines tagged ${tag(key)}.`, from: tag(key) };
}

const member = <T>(table: Readonly<Record<string, T>>, key: string): T | undefined =>
  Object.hasOwn(table, key) ? table[key] : undefined;

const plural = (word: string): string => `${word.replace('_', ' ')}s`;
