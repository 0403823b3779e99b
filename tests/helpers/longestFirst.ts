import { BaseSequencer, type TestSequencerConstructor, type TestSpecification } from 'vitest/node';

/**
 * Begins with files that take long for their size, longest first: where nothing was ever run files go by size, and a long one
 * begun last is waited for alone. Files that start afresh go before those that share what is loaded, which a process drops as
 * soon as the next file is not one of them.
 */
export function longestFirst(names: readonly string[]): TestSequencerConstructor {
  const rank = ({ moduleId }: TestSpecification): number => {
    const at = names.findIndex((name) => moduleId.endsWith(`/${name}`));
    return at < 0 ? names.length : at;
  };
  const shares = ({ project }: TestSpecification): number => (project.config.isolate ? 0 : 1);
  return class extends BaseSequencer {
    override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
      const bySize = await super.sort(files);
      return bySize.toSorted((a, b) => shares(a) - shares(b) || rank(a) - rank(b));
    }
  };
}
