import { Mark } from '../../look/marks/mark.tsx';
import { words } from '../../words.ts';

/** How to read the uprights. */
export function BoxesKey({ boxes }: { readonly boxes: number }) {
  return (
    <ul className="boxes-key">
      <li>
        <svg width="14" height="18" aria-hidden="true">
          <g transform="translate(2 3)">
            <Mark family="root" width={10} height={14} isHollow={false} />
          </g>
        </svg>
        {words.box.fromField}
      </li>
      <li>
        <svg width="14" height="18" aria-hidden="true">
          <g transform="translate(2 3)">
            <Mark family="root" width={10} height={14} isHollow={true} />
          </g>
        </svg>
        {words.box.fromStore}
      </li>
      <li>
        <svg width="18" height="18" aria-hidden="true">
          <g transform="translate(4 7)">
            <Mark family="salad" width={10} height={10} isHollow={false} />
            <path d="M-2.4 0q7.4 -8.5 14.8 0" fill="none" stroke="var(--ink)" strokeWidth="1.3" />
          </g>
        </svg>
        {words.box.underCover}
      </li>
      <li>
        <svg width="8" height="18" aria-hidden="true">
          <path d="M4 2v15" stroke="var(--ink3)" strokeDasharray="2 4" />
        </svg>
        {words.box.noBox}
      </li>
      <li>{words.box.upright(boxes)}</li>
    </ul>
  );
}
