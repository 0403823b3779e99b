import { coverWords } from '../../shared/words/coverWords.ts';
import {
  type Cover,
  covers,
  type LieQuality,
  lieQualities,
  type Moisture,
  moistures,
} from '../../shared/words/vocabulary.ts';
import { lieWords } from './words.ts';

export interface LieChoice {
  readonly cover: Cover | null;
  readonly lie: LieQuality | null;
  readonly moisture: Moisture | null;
}

interface LieFieldsProps {
  /** What is chosen; null goes with what `asIs` says. */
  readonly chosen: LieChoice;
  /** Words for what holds where nothing is chosen. A lie without words has to be chosen. */
  readonly asIs: { readonly cover: string; readonly lie: string | null; readonly moisture: string };
  readonly change: (change: Partial<LieChoice>) => void;
}

const AS_IS = 'as-is';

/** Ground, lie and moisture under a ball. */
export function LieFields({ chosen, asIs, change }: LieFieldsProps): React.JSX.Element {
  return (
    <>
      <Field
        name="Ground"
        value={chosen.cover}
        all={covers}
        words={coverWords}
        asIs={asIs.cover}
        choose={(cover) => change({ cover })}
      />
      <Field
        name="Lie"
        value={chosen.lie}
        all={lieQualities}
        words={lieWords}
        asIs={asIs.lie}
        choose={(lie) => change({ lie })}
      />
      <Field
        name="Moisture"
        value={chosen.moisture}
        all={moistures}
        words={moistureWords}
        asIs={asIs.moisture}
        choose={(moisture) => change({ moisture })}
      />
    </>
  );
}

const moistureWords: Readonly<Record<Moisture, string>> = { dry: 'dry', damp: 'damp', wet: 'wet' };

function Field<T extends string>(props: {
  readonly name: string;
  readonly value: T | null;
  readonly all: readonly T[];
  readonly words: Readonly<Record<T, string>>;
  readonly asIs: string | null;
  readonly choose: (value: T | null) => void;
}): React.JSX.Element {
  const { name, value, all, words, asIs, choose } = props;
  return (
    <label>
      <span>{name}</span>
      <select
        value={value ?? AS_IS}
        onChange={({ target }) => choose(all.find((one) => one === target.value) ?? null)}
      >
        {asIs !== null && <option value={AS_IS}>{asIs}</option>}
        {all.map((one) => (
          <option key={one} value={one}>
            {words[one]}
          </option>
        ))}
      </select>
    </label>
  );
}
