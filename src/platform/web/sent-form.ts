import { createParamDecorator, type ExecutionContext } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import type { VNode } from 'preact';
import { BadForm } from '../refusal.js';
import { say } from '../sentences/sentences.js';
import { formPipe } from './check-form.js';
import { formTroubleOf, secretFields, type FormTrouble } from './form-trouble.js';
import { instantOfLocal, NoSuchTime } from './local-time.js';
import type { HouseRequest, Said } from './request.js';
import { sayNext } from './said.js';

/** How a page's form is taken. */
export interface Taking<Form extends object, Answer> {
  readonly form: new () => Form;
  /** Fields that hold the plant's local time; they become instants before the form is checked. */
  readonly times?: readonly (keyof Form & string)[];
  readonly timeZone: string;
  readonly act: (form: Form) => Promise<Answer>;
  /** Where the browser goes on. */
  readonly next: (answer: Answer) => string;
  readonly says?: (answer: Answer) => Said | null;
  /** The page again, with what was entered and what is wrong. */
  readonly again: (trouble: FormTrouble) => VNode | Promise<VNode>;
}

/** What script gets in the place of a redirection. */
export interface TakenForScript {
  readonly next: string;
  readonly said: string | null;
}

const pipe = formPipe();

/** A form that a page sent: taken once, or shown again. */
export class SentForm {
  constructor(
    private readonly request: HouseRequest,
    private readonly reply: FastifyReply,
  ) {}

  /** The network address that it came from. */
  get address(): string {
    return this.request.ip;
  }

  /** What was entered, field by field, without secrets: a page that asks once more carries it along. */
  get entered(): readonly (readonly [name: string, value: string])[] {
    const body = Object.entries((this.request.body ?? {}) as Record<string, unknown>);
    return body.flatMap(([name, value]) => {
      const texts = (Array.isArray(value) ? value : [value]).filter((one): one is string => typeof one === 'string');
      return secretFields.has(name) ? [] : texts.map((text) => [name, text] as const);
    });
  }

  /**
   * Checks the form, acts, and goes on: a browser is led to the next page (reloading it sends nothing again), script
   * gets `{next, said}`. What was refused shows the page again with what was entered; script gets a problem document.
   */
  async take<Form extends object, Answer>(taking: Taking<Form, Answer>): Promise<VNode | TakenForScript | null> {
    try {
      const form = await this.read(taking);
      const answer = await taking.act(form);
      return this.goOn(taking.next(answer), taking.says?.(answer) ?? null);
    } catch (error) {
      const goesOn = this.isOfScript || this.isKept();
      const trouble = goesOn ? null : formTroubleOf(error, this.request.body, taking.timeZone);
      if (trouble === null) throw error;
      void this.reply.status(trouble.status);
      return taking.again(trouble);
    }
  }

  /**
   * As `take`, but the answer is a page of its own: for what is shown once only. Reloading it sends the form again, and
   * its key finds the same answer, without what was shown.
   */
  async show<Form extends object, Answer>(
    showing: Omit<Taking<Form, Answer>, 'next' | 'says'> & {
      readonly page: (answer: Answer) => VNode | Promise<VNode>;
    },
  ): Promise<VNode> {
    try {
      const form = await this.read({ ...showing, next: () => '/' });
      const answer = await showing.act(form);
      void this.reply.status(200);
      return await showing.page(answer);
    } catch (error) {
      const trouble = formTroubleOf(error, this.request.body, showing.timeZone);
      if (trouble === null) throw error;
      void this.reply.status(trouble.status);
      return showing.again(trouble);
    }
  }

  /** A page in answer to the form that is neither its next nor the form again. */
  shows(page: VNode): VNode {
    void this.reply.status(200);
    return page;
  }

  private async read<Form extends object, Answer>({ form, times, timeZone }: Taking<Form, Answer>): Promise<Form> {
    const body = { ...(this.request.body as Record<string, unknown> | null | undefined) };
    for (const field of times ?? []) body[field] = instantOf(field, body[field], timeZone);
    return (await pipe.transform(body, { type: 'body', metatype: form })) as Form;
  }

  private goOn(next: string, said: Said | null): TakenForScript | null {
    if (said !== null) sayNext(this.reply, said);
    if (this.isOfScript) {
      void this.reply.status(200);
      return { next, said: said === null ? null : say(said.code, said.facts) };
    }
    void this.reply.status(303).header('Location', next);
    return null;
  }

  /** Of an entry that happened earlier nobody is asked again: it is kept as it is. */
  private isKept(): boolean {
    return this.request.happening?.how === 'queued';
  }

  /** Sent by script, which is answered without a page. */
  get isOfScript(): boolean {
    return (this.request.headers.accept ?? '').startsWith('application/json');
  }
}

/** @throws {BadForm} for a time that the plant's clocks did not show */
function instantOf(field: string, value: unknown, timeZone: string): unknown {
  if (typeof value !== 'string' || value.trim() === '') return undefined;
  if (/(Z|[+-]\d\d:\d\d)$/.test(value.trim())) return value;
  try {
    return instantOfLocal(value, timeZone);
  } catch (error) {
    if (error instanceof NoSuchTime) throw new BadForm([{ field, code: 'field-not-local-time', facts: {} }]);
    throw error;
  }
}

/** The form that a page sent. */
export const Sent = createParamDecorator((_: unknown, context: ExecutionContext): SentForm => {
  const http = context.switchToHttp();
  return new SentForm(http.getRequest<HouseRequest>(), http.getResponse<FastifyReply>());
});
