import type { BoxItem, BoxWeek } from '@leywright/planner';
import { weekNumberOf, weekSpan } from '../../look/head/year-weeks.ts';
import { boxOrder } from '../../look/marks/families.ts';
import { Square } from '../../look/marks/mark.tsx';
import { Figure, type Sentence, Spoken } from '../../look/page/figure.tsx';
import { words } from '../../words.ts';
import { itemsText } from './box-bricks.tsx';

/** One way to mend a short week. */
export interface WayToFill {
  readonly id: string;
  readonly sentence: Sentence;
  readonly onPencil?: () => void;
}

interface WeekSlipProps {
  readonly box: BoxWeek;
  readonly sizes: readonly { readonly id: string; readonly name: string }[];
  readonly size: string;
  readonly onSize: (id: string) => void;
  readonly plotNames: ReadonlyMap<string, string>;
  readonly ways: readonly WayToFill[];
}

/** One week's box written out: what, how much, from where; what is missing; ways to fill it. */
export function WeekSlip({ box, sizes, size, onSize, plotNames, ways }: WeekSlipProps) {
  const isClosed = box.closed !== null || box.boxes === 0;
  return (
    <section className="slip" aria-label={`${words.box.week} ${weekNumberOf(box.week)}`}>
      <header>
        <h2>
          {words.box.week} {weekNumberOf(box.week)}
        </h2>
        <span>{weekSpan(box.week)}</span>
      </header>
      {isClosed ? (
        <p>{words.box.closed}</p>
      ) : (
        <>
          {sizes.length > 1 ? <SizeChoice sizes={sizes} size={size} onSize={onSize} /> : null}
          <SlipTable box={box} size={size} plotNames={plotNames} />
          <p className="slip-sum">
            <Figure
              id={box.why}
            >{`${itemsText(box.itemsPerBox)} ${words.box.of} ${box.promised} ${words.box.items}`}</Figure>
          </p>
        </>
      )}
      {ways.length === 0 ? null : <WaysToFill ways={ways} />}
    </section>
  );
}

/** What is in the box, then what is missing. */
function SlipTable({ box, size, plotNames }: Pick<WeekSlipProps, 'box' | 'size' | 'plotNames'>) {
  return (
    <table>
      <tbody>
        {inBoxOrder(box.items).map((item) => (
          <ItemLine key={`${item.slot}-${item.crop}-${item.from}`} item={item} size={size} plotNames={plotNames} />
        ))}
        {box.missing.map((gap) => (
          <tr key={gap.slot} className="gap">
            <td colSpan={3}>
              <div>
                <i className="missing-square" />
                <span>
                  {words.box.missing}
                  {gap.boxesShare < 0.995 ? <small>{shareText(gap.boxesShare)}</small> : null}
                </span>
              </div>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function WaysToFill({ ways }: Pick<WeekSlipProps, 'ways'>) {
  return (
    <>
      <h3>{words.box.ways}</h3>
      <ul className="ways-to-fill">
        {ways.map((way) => (
          <li key={way.id}>
            <Spoken sentence={way.sentence} />{' '}
            {way.onPencil === undefined ? null : (
              <button type="button" className="link" onClick={way.onPencil}>
                {words.box.pencil}
              </button>
            )}
          </li>
        ))}
      </ul>
    </>
  );
}

function SizeChoice({ sizes, size, onSize }: Pick<WeekSlipProps, 'sizes' | 'size' | 'onSize'>) {
  return (
    <fieldset className="size-choice">
      <legend className="hidden-text">{words.box.size}</legend>
      {sizes.map(({ id, name }) => (
        <label key={id}>
          <input type="radio" name="box-size" checked={id === size} onChange={() => onSize(id)} />
          <span>{name}</span>
        </label>
      ))}
    </fieldset>
  );
}

function ItemLine({
  item,
  size,
  plotNames,
}: {
  readonly item: BoxItem;
  readonly size: string;
  readonly plotNames: ReadonlyMap<string, string>;
}) {
  return (
    <tr>
      <td>
        <div>
          <Square family={item.look} isHollow={item.from === 'store'} />
          <span>
            {item.name}
            {item.boxesShare < 0.995 ? <small>{shareText(item.boxesShare)}</small> : null}
          </span>
        </div>
      </td>
      <td>{amountText(item, size)}</td>
      <td>{whereFrom(item, plotNames)}</td>
    </tr>
  );
}

function whereFrom(item: BoxItem, plotNames: ReadonlyMap<string, string>): string {
  if (item.from === 'store') return words.box.inStore;
  const plots = item.plots.map((plot) => plotNames.get(plot) ?? plot).join(', ');
  return plots === '' && item.from === 'tunnel' ? words.box.tunnel : plots;
}

function inBoxOrder(items: readonly BoxItem[]): readonly BoxItem[] {
  return [...items].sort((a, b) => boxOrder.indexOf(a.look) - boxOrder.indexOf(b.look) || b.boxesShare - a.boxesShare);
}

/** "800 g", "1 head", "1 bunch"; a dash where this size of box gets none of it. */
export function amountText(item: BoxItem, size: string): string {
  const amount = item.portions[size];
  if (amount === undefined || amount === 0) return '–';
  if (item.unit === 'kg') return amount < 1 ? `${Math.round(amount * 1000)} g` : `${Number(amount.toFixed(2))} kg`;
  const one = item.unit === 'head' ? 'head' : 'bunch';
  const many = item.unit === 'head' ? 'heads' : 'bunches';
  return `${Number(amount.toFixed(2))} ${amount === 1 ? one : many}`;
}

function shareText(share: number): string {
  return `${Math.round(share * 100)} % of boxes`;
}
