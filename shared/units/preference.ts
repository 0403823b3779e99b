/** How lengths are shown to a person: yards, feet and paces, or metres with paces. Green speed is always feet. */
export interface UnitsPreference {
  readonly system: 'yards' | 'metres';
  /** One pace of this person, metres. */
  readonly paceM: number;
}
