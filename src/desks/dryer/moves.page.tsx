import type { VNode } from 'preact';
import { spacedBagNumber } from '../../core/identifiers/bag-number.js';
import { mayDo } from '../../platform/actor.js';
import { say } from '../../platform/sentences/sentences.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Act, ActLink } from '../../platform/web/kit/act.js';
import { ChoiceEntry, TextEntry } from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import { Table } from '../../platform/web/kit/table.js';
import { clockText } from '../../platform/web/local-text.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';
import type { PlaceRow } from '../../plant/plant-rows.js';

export interface MovedBag {
  readonly id: string;
  readonly bagId: string;
  readonly number: string;
  readonly place: string;
  readonly movedAt: string;
}

interface MovesProps {
  readonly viewer: Viewer;
  readonly places: readonly PlaceRow[];
  /** The place of the bag before. */
  readonly placeId: string | null;
  readonly last: readonly MovedBag[];
  readonly trouble: FormTrouble | null;
}

/** Where bags are put: the place stays chosen, bags are scanned one after the other. */
export function movesPage({ viewer, places, placeId, last, trouble }: MovesProps): VNode {
  const ordered = places.map(({ id, code, kind }) => ({ value: id, says: code, about: say(`place-${kind}`) }));
  return (
    <Shell title={say('moves-title')} viewer={viewer} use="tablet">
      {places.length === 0 ? <p class="sentence">{say('moves-no-places')}</p> : null}
      {mayDo(viewer.actor.roles, 'move-bags') && places.length > 0 ? (
        <EntryForm viewer={viewer} action="/dryer/moves" trouble={trouble}>
          <ChoiceEntry
            name="placeId"
            label={say('moves-place')}
            as={places.length > 12 ? 'list' : 'tiles'}
            value={placeId ?? undefined}
            choices={ordered}
            required
            trouble={trouble}
          />
          <TextEntry
            name="bag"
            label={say('moves-bag')}
            hint={say('moves-bag-hint')}
            isCode
            required
            autofocus
            maxLength={60}
            trouble={trouble}
          />
          <Act says={say('moves-put')} />
        </EntryForm>
      ) : null}
      <Table
        caption={say('moves-last')}
        columns={[{ head: say('dryer-bag') }, { head: say('moves-place') }, { head: say('moves-at') }]}
        rows={last.map(({ id, bagId, number, place, movedAt }) => ({
          key: id,
          cells: [<a href={`/bags/${bagId}`}>{spacedBagNumber(number)}</a>, place, clockText(movedAt, viewer.timeZone)],
        }))}
      />
      <p class="acts">
        <ActLink href="/dryer" says={say('dryer-back')} />
      </p>
      <p class="caution">{say('dryer-caution')}</p>
    </Shell>
  );
}
