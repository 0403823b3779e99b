/** A caution printed with every playbook: what to mind, and whose word counts. */
export interface Caution {
  readonly heading: string;
  readonly text: string;
  /** Where it comes from; the published text governs. */
  readonly source: string;
}

export const cautions: readonly Caution[] = [
  {
    heading: 'For preparation and practice',
    text:
      'These pages say which shot, club and line to choose, worked out by a computer beforehand. Whether any of it may be ' +
      'carried or used in a round is for the Rules of Golf and the Committee to say. Ask before you play.',
    source: 'Rules of Golf, Rule 4.3a; the published Rules govern',
  },
  {
    heading: 'Green-reading material',
    text:
      'For a stroke on the green, and for a stroke with a putter meant to finish on it, the Rules limit the scale of a ' +
      'green image to 3/8 in to 5 yd (1\u00a0:\u00a0480) and the paper to 4¼\u00a0×\u00a07\u00a0in. The cards keep both sizes; the larger ' +
      'pages do not. Keeping to size is not by itself leave to use them: there are further conditions, among them on who ' +
      'wrote the notes.',
    source: 'Clarification 4.3a/1 (since 1 January 2019)',
  },
  {
    heading: 'Where Model Local Rule G-11 is in force',
    text:
      'Only yardage books the Committee has approved may be used, and notes are limited to what was seen or felt. ' +
      'Nothing printed here meets that by itself.',
    source: 'Committee Procedures, Model Local Rule G-11 (since 1 January 2022)',
  },
  {
    heading: 'Practising on the course',
    text:
      'When and where a course may be practised on before or between rounds differs between match play and stroke play, ' +
      'and the Committee may change it.',
    source: 'Rules 5.2 and 5.5; Model Local Rule I-1',
  },
  {
    heading: 'Out on the ground',
    text:
      'Measure and practise with the club’s permission, face play, stop for players, and leave nothing in the ground. Seek ' +
      'safety at the first lightning or warning signal.',
    source: 'Common practice; Rule 5.7a',
  },
];
