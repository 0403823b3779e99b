import { headerOf } from '../../shared/atlas/document.ts';
import type { AtlasDocument } from '../../shared/atlas/records.ts';
import { optionName } from '../../shared/planner/optionName.ts';
import type { PlanOption } from '../../shared/planner/plan.ts';
import type { Scene } from '../../shared/planner/scene.ts';
import { headed, type PictureHead } from '../../shared/plate/headed.ts';
import { screenStyle } from '../../shared/plate/style.ts';
import type { SvgNode } from '../../shared/plate/svgNode.ts';
import { dayText } from '../../shared/playbook/dayText.ts';
import type { PlaybookFont } from '../../shared/playbook/playbookCss.ts';
import type { UnitsPreference } from '../../shared/units/preference.ts';
import { tell, troubleOf } from '../store/notices.ts';
import { useSteady } from '../ui/useSteady.ts';
import { holeWords } from '../ui/words.ts';
import type { Choice } from './Chooser.tsx';
import { type Pictured, savePicture } from './savePicture.ts';

interface PictureOf {
  readonly document: AtlasDocument;
  readonly scene: Scene | null;
  readonly ball: Choice | undefined;
  readonly flag: Choice | undefined;
  /** The option drawn in red; null for none. */
  readonly option: PlanOption | null;
  readonly units: UnitsPreference;
  readonly largeType: boolean;
  readonly fonts: () => Promise<readonly PlaybookFont[]>;
}

/** Lets a drawing of the plan be kept as a file that says what it is of. */
export function useSavePicture(
  of: PictureOf,
): (what: Pictured, kind: 'svg' | 'png', drawing: SvgNode) => void {
  return useSteady((what, kind, drawing) => {
    const { scene, ball, flag, largeType } = of;
    const name = ['hole', scene?.hole.label, 'ball', ball?.label, 'flag', flag?.label, what].join('-');
    const whole =
      scene === null
        ? drawing
        : headed(drawing, headOf(of, scene, what), screenStyle('head', largeType ? 1.2 : 1));
    void of
      .fonts()
      .then((letters) => savePicture(whole, kind, name.toLowerCase(), letters))
      .catch((error: unknown) => tell(troubleOf(error)));
  });
}

function headOf(
  { document, ball, flag, option, units }: PictureOf,
  scene: Scene,
  what: Pictured,
): PictureHead {
  const { hole, player, conditions } = scene;
  const shot =
    option === null || ball === undefined || flag === undefined
      ? null
      : `${optionName(option)}: ${ball.name}, to flag\u00a0${flag.label}`;
  const place = `${headerOf(document).name}, ${holeWords(hole.label, hole.name)}`;
  const shown = {
    plate: [],
    section: ['From the side, along the line from ball to flag'],
    leaves: option === null ? [] : [`Where ${String(option.finishCodes.length)} simulated shots stop`],
  }[what];
  return {
    title: shot ?? place,
    lines: [
      ...shown,
      ...(shot === null ? [] : [`${place}, for ${player.name}`]),
      dayText(document, conditions, units),
    ],
  };
}
