import { useEffect, useState } from 'react';
import type { SvgNode } from '../../shared/plate/svgNode.ts';
import type { Desk } from '../store/desk.ts';
import { Drawing } from '../ui/drawing.tsx';
import { thumbnailDrawing } from './thumbnailDrawing.ts';

interface ThumbnailProps {
  readonly desk: Desk;
  readonly id: string;
  /** Another time is another state of the atlas. */
  readonly updatedAt: number;
}

/** A small picture of an atlas of the library; blank until it has been read. */
export function Thumbnail({ desk, id, updatedAt }: ThumbnailProps): React.JSX.Element {
  const [node, setNode] = useState<SvgNode | null>(null);
  useEffect(() => {
    let wanted = true;
    desk.look(id).then(
      (document) => {
        if (wanted) setNode(document === null ? null : thumbnailDrawing(document));
      },
      () => undefined,
    );
    return () => {
      wanted = false;
    };
  }, [desk, id, updatedAt]);
  return (
    <div className="thumbnail" aria-hidden>
      <Drawing node={node} />
    </div>
  );
}
