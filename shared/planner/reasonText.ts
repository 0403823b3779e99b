import type { UnitsPreference } from '../units/preference.ts';
import type { Reason } from './plan.ts';

export function reasonText(reason: Reason, _units: UnitsPreference): string {
  return reason.kind;
}
