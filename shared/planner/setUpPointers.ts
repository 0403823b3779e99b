import { techniqueRules } from '../player/technique.ts';
import type { Technique } from '../words/vocabulary.ts';

/** How a technique is set up: ball position, weight, hands and face, a sentence each. Common practice, not measured. */
export const setUpPointers = (technique: Technique): readonly string[] => techniqueRules[technique].setUp;
