import type { VNode } from 'preact';
import { say } from '../platform/sentences/sentences.js';
import { localText } from '../platform/web/local-text.js';
import { layOutRibbons, ribbonSizes, type Corners, type RibbonPicture } from './ribbon-layout.js';
import { amountsText, axisText, ribbonsInWords } from './ribbon-words.js';
import type { Ribbons } from './ribbons.js';

interface RibbonsProps {
  readonly of: readonly Ribbons[];
  readonly timeZone: string;
}

/** Bags as ribbons through the hopper: one picture for each period that the packs came through. */
export function RibbonPictures({ of, timeZone }: RibbonsProps): VNode | null {
  if (of.length === 0) return null;
  return (
    <section class="card" aria-labelledby="ribbons">
      <h2 id="ribbons">{say('ribbon-title')}</h2>
      <p>{say('ribbon-how-to-read')}</p>
      {of.map((ribbons, place) => (
        <figure key={ribbons.periodId} class="ribbons">
          <figcaption>
            {say('ribbon-caption', {
              hopper: ribbons.hopperCode,
              at: localText(ribbons.startedAt, timeZone),
            })}
          </figcaption>
          <Picture of={ribbons} id={`ribbons-${place}`} />
        </figure>
      ))}
    </section>
  );
}

function Picture({ of, id }: { readonly of: Ribbons; readonly id: string }): VNode {
  const picture = layOutRibbons(of);
  return (
    <svg
      class="picture ribbon-picture"
      viewBox={`0 0 ${picture.width} ${picture.height}`}
      role="img"
      aria-labelledby={`${id}-title`}
      aria-describedby={`${id}-desc`}
    >
      <title id={`${id}-title`}>{say('ribbon-picture', { hopper: of.hopperCode })}</title>
      <desc id={`${id}-desc`}>{ribbonsInWords(of)}</desc>
      <Lanes picture={picture} />
      <g>
        {picture.ribbons.map(({ bagId, most, likely, least }) => (
          <g key={bagId}>
            <Shapes of={most} class="ribbon-most" />
            <Shapes of={likely} class="ribbon-likely" />
            <Shapes of={least} class="ribbon-least" />
          </g>
        ))}
      </g>
      <Rows picture={picture} />
    </svg>
  );
}

/** What was tipped above, what was packed below, one scale for both; the packs asked for are framed and hatched. */
function Lanes({ picture }: { readonly picture: RibbonPicture }): VNode {
  const { tippedTop, packedTop, laneHeight, width } = ribbonSizes;
  const below = packedTop + laneHeight;
  return (
    <>
      <text x="0" y="14">
        {say('ribbon-tipped')}
      </text>
      {picture.boxes.map(({ x, width: wide, label, part }) => (
        <g key={x}>
          <rect class={`tipped-${part}`} x={x} y={tippedTop} width={wide} height={laneHeight} />
          <text
            class={part === 'drawn' ? 'on-dark' : undefined}
            x={x + wide / 2}
            y={tippedTop + 20}
            text-anchor="middle"
          >
            {label}
          </text>
        </g>
      ))}
      <rect class="tipped-none" x={picture.outX} y={packedTop} width={picture.outWidth} height={laneHeight} />
      {picture.windows.map(({ x, width: wide }) => (
        <rect key={x} class="asked-window" x={x} y={packedTop} width={wide} height={laneHeight} />
      ))}
      <path class="hatch" d={picture.hatches.map(([from, to]) => `M${from.join(' ')} L${to.join(' ')}`).join(' ')} />
      <path class="line" d={`M0 ${tippedTop - 4} H${width} M0 ${below + 6} H${width}`} />
      {picture.ticks.map(({ x, grams }) => (
        <g key={grams}>
          <path class="line" d={`M${x} ${tippedTop - 8} V${tippedTop - 4} M${x} ${below + 6} V${below + 10}`} />
          <text x={within(x)} y={tippedTop - 12} text-anchor="middle">
            {axisText(grams)}
          </text>
          <text x={within(x)} y={below + 23} text-anchor="middle">
            {axisText(grams)}
          </text>
        </g>
      ))}
      <text x="0" y={below + 40}>
        {say('ribbon-packed')}
      </text>
    </>
  );
}

/** A tick's number stays inside the picture. */
function within(x: number): number {
  return Math.min(ribbonSizes.width - 25, Math.max(25, x));
}

function Shapes({ of, ...rest }: { readonly of: readonly Corners[]; readonly class: string }): VNode {
  return (
    <>
      {of.map((corners, place) => (
        <polygon key={place} class={rest.class} points={corners.map((corner) => corner.join(',')).join(' ')} />
      ))}
    </>
  );
}

/** Each bag's three amounts as bars on one scale: an open frame, a filled bar in it, a thin solid one in that. */
function Rows({ picture }: { readonly picture: RibbonPicture }): VNode {
  const { barLeft, barWidth, rowHeight, rowsTop } = ribbonSizes;
  return (
    <>
      {picture.rows.map(({ bag, y, leastWidth, likelyWidth, mostWidth }) => (
        <g key={bag.bagId}>
          <text x="0" y={y + 15}>
            {bag.name}
          </text>
          <rect class="ribbon-most" x={barLeft} y={y + 2} width={mostWidth} height={rowHeight - 6} />
          <rect class="ribbon-likely" x={barLeft} y={y + 5} width={likelyWidth} height={rowHeight - 12} />
          <rect class="ribbon-least" x={barLeft} y={y + 9} width={leastWidth} height={rowHeight - 20} />
          <text class="ribbon-row" x={barLeft + barWidth + 10} y={y + 15}>
            {amountsText(bag)}
          </text>
        </g>
      ))}
      {picture.withoutRow === 0 ? null : (
        <text x="0" y={rowsTop + picture.rows.length * rowHeight + 15}>
          {say('ribbon-without-row', { count: picture.withoutRow })}
        </text>
      )}
    </>
  );
}
