import { Inject, Injectable } from '@nestjs/common';
import type { VNode } from 'preact';
import { mayDo } from '../../platform/actor.js';
import { Clock } from '../../platform/clock.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { say } from '../../platform/sentences/sentences.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import type { Viewer } from '../../platform/web/request.js';
import { BagTypeForm, GradeForm } from './goods-forms.js';
import { DryerForm, HopperForm, LineForm, ScaleForm, ShiftsForm, SiteForm } from './machine-forms.js';
import { PeopleStep } from './people-step.js';
import { peopleOf } from '../../people/people.js';
import { setUpPage, stepPage } from './set-up.page.js';
import { setUpState, type Step } from './set-up-state.js';
import type { StepFormProps } from './step-kit.js';
import { CustomerForm, FormatForm, PlaceForm, RulesForm } from './trade-forms.js';

type Forms = Readonly<Record<Exclude<Step, 'people' | 'devices' | 'bag-types'>, (props: StepFormProps) => VNode>>;

const forms: Forms = {
  site: SiteForm,
  shifts: ShiftsForm,
  scales: ScaleForm,
  dryers: DryerForm,
  hoppers: HopperForm,
  lines: LineForm,
  grades: GradeForm,
  formats: FormatForm,
  places: PlaceForm,
  customers: CustomerForm,
  rules: RulesForm,
};

/** What was asked of a step's page beside its form. */
export interface StepAsked {
  /** The form that was refused, by its address, and why. */
  readonly trouble?: StepFormProps['trouble'];
  readonly changing?: string | null;
}

/** Reads what is set up, and makes the pages of the set-up. */
@Injectable()
export class SetUpPages {
  constructor(
    private readonly clock: Clock,
    @Inject(READER) private readonly reader: ReadFrom,
  ) {}

  async list(viewer: Viewer): Promise<VNode> {
    return setUpPage({ viewer, state: await this.state(viewer) });
  }

  async step(viewer: Viewer, step: Step, { trouble = null, changing = null }: StepAsked = {}): Promise<VNode> {
    const state = await this.state(viewer);
    const props = { viewer, state, trouble };
    return stepPage({ viewer, state, step, children: await this.content(step, props, changing) });
  }

  /** The page again with the form that was refused. */
  again(viewer: Viewer, step: Step, of: string): (why: FormTrouble) => Promise<VNode> {
    return (why) => this.step(viewer, step, { trouble: { of, why } });
  }

  private async content(step: Step, props: StepFormProps, changing: string | null): Promise<VNode> {
    const { viewer } = props;
    if (step === 'people') {
      const people = await peopleOf(this.reader, viewer.actor.siteId, { before: null, limit: 200 });
      return PeopleStep({ ...props, people });
    }
    if (step === 'devices') {
      return (
        <p>
          <a class="act plain" href="/devices">
            {say('set-up-to-devices')}
          </a>
        </p>
      );
    }
    // Who may not set up sees what there is on the page of the plant: no form is shown to be refused.
    if (!mayDo(viewer.actor.roles, 'set-up-plant') && !(step === 'rules' && mayDo(viewer.actor.roles, 'decide'))) {
      return (
        <p>
          {say('set-up-not-yours')} <a href="/plant">{say('way-plant')}</a>
        </p>
      );
    }
    return step === 'bag-types' ? BagTypeForm({ ...props, changing }) : forms[step](props);
  }

  private state(viewer: Viewer): ReturnType<typeof setUpState> {
    return setUpState(this.reader, viewer.actor.siteId, this.clock.now());
  }
}
