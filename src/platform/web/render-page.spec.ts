import { describe, expect, it } from '@jest/globals';
import { h, type VNode } from 'preact';
import { renderPage } from './render-page.js';

const tag = (name: string, attributes: object, ...children: readonly (VNode | string)[]): VNode =>
  h(name, attributes, ...children);
const page = (...children: readonly (VNode | string)[]): string =>
  renderPage(tag('main', { id: 'content', tabIndex: -1 }, ...children));

describe('a page that is rendered', () => {
  it('begins at its content, where nothing on it is to be done first', () => {
    expect(page('It is <main> and autofocus in words.')).toBe(
      '<!doctype html><main id="content" tabindex="-1" autofocus>It is &lt;main> and autofocus in words.</main>',
    );
  });

  it('begins at the field that asks for it', () => {
    expect(page(tag('input', { name: 'seal', autofocus: true }))).toBe(
      '<!doctype html><main id="content" tabindex="-1"><input name="seal" autofocus/></main>',
    );
  });
});
