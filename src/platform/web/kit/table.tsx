import type { ComponentChildren, VNode } from 'preact';
import { say } from '../../sentences/sentences.js';

/** A column: what stands above it, and how its cells are set. */
export interface Column {
  readonly head: string;
  readonly align?: 'number' | 'code' | undefined;
}

/** A row: its cells in the order of the columns; the first names it. */
export interface TableRow {
  readonly key: string;
  readonly cells: readonly ComponentChildren[];
  /** Someone must look at it. */
  readonly isLoud?: boolean | undefined;
}

interface TableProps {
  readonly caption: string;
  readonly columns: readonly Column[];
  readonly rows: readonly TableRow[];
  /** The last line, such as a sum: its cells in the order of the columns. */
  readonly foot?: readonly ComponentChildren[] | undefined;
  /** What is said where there is no row. */
  readonly empty?: string | undefined;
  /** The caption is read out, not shown: a heading above says the same. */
  readonly hasHiddenCaption?: boolean | undefined;
}

/** A table in a region that scrolls by itself on narrow screens; a sentence where there is nothing. */
export function Table({ caption, columns, rows, foot, empty, hasHiddenCaption }: TableProps): VNode {
  if (rows.length === 0) {
    return (
      <p class="quiet">
        {hasHiddenCaption === true ? (empty ?? say('nothing-here')) : `${caption}: ${empty ?? say('nothing-here')}`}
      </p>
    );
  }
  return (
    <div class="table-wrap" tabIndex={0} role="region" aria-label={caption}>
      <table>
        <caption class={hasHiddenCaption === true ? 'unseen' : undefined}>{caption}</caption>
        <thead>
          <tr>
            {columns.map(({ head, align }, place) => (
              <th key={place} scope="col" class={align}>
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ key, cells, isLoud }) => (
            <Row key={key} cells={cells} columns={columns} isLoud={isLoud} />
          ))}
        </tbody>
        {foot === undefined ? null : (
          <tfoot>
            <Row cells={foot} columns={columns} />
          </tfoot>
        )}
      </table>
    </div>
  );
}

interface RowProps extends Pick<TableProps, 'columns'>, Pick<TableRow, 'cells' | 'isLoud'> {}

function Row({ cells, columns, isLoud }: RowProps): VNode {
  return (
    <tr class={isLoud === true ? 'loud' : undefined}>
      {cells.map((cell, place) => (
        <Cell key={place} isFirst={place === 0} align={columns[place]?.align}>
          {cell}
        </Cell>
      ))}
    </tr>
  );
}

interface CellProps {
  readonly isFirst: boolean;
  readonly align: Column['align'];
  readonly children: ComponentChildren;
}

function Cell({ isFirst, align, children }: CellProps): VNode {
  return isFirst ? (
    <th scope="row" class={align}>
      {children}
    </th>
  ) : (
    <td class={align}>{children}</td>
  );
}
