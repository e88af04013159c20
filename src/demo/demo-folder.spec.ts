import { existsSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from '@jest/globals';
import { clearFolder, planFolder } from './demo-folder.js';
import { readDemoWish } from './demo-options.js';
import { writeTruth, type DemoTruth } from './truth.js';

let folder: string;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'packthread-demo-folder-'));
});

afterEach(() => {
  rmSync(folder, { recursive: true, force: true });
});

const truth: DemoTruth = {
  ...{ days: 14, seed: 1, size: 'usual', siteId: 'site', endsAt: '2026-10-26T09:25:00.000Z' },
  ...{ pours: [], cells: [], pallets: [] },
};

describe('the command line of the demo', () => {
  it('takes days, seed, size, folder and port', () => {
    const words = '--days 3 --seed 7 --size large --data there --port 4000 --no-serve'.split(' ');
    expect(readDemoWish(words)).toEqual({
      ...{ days: 3, seed: 7, size: 'large', dataFolder: 'there', port: 4000, isServed: false, isFresh: false },
    });
  });

  it.each(['--days 0', '--days 1.5', '--days', '--size huge', '--port 70000', '--weeks 2', 'more'])(
    'refuses %s, and says what it takes',
    (words) => {
      expect(() => readDemoWish(words.split(' '))).toThrow(/--days N/);
    },
  );
});

describe('the folder of the demo', () => {
  it('gets the usual demo where it is empty, and the one asked for', () => {
    expect(planFolder(folder, readDemoWish([]))).toEqual({
      kind: 'make',
      options: { days: 14, seed: 1, size: 'usual' },
    });
    const options = { days: 2, seed: 1, size: 'usual' };
    expect(planFolder(folder, readDemoWish(['--days', '2']))).toEqual({ kind: 'make', options });
  });

  it('is served where it holds the demo that is asked for, or any when nothing is', () => {
    writeTruth(folder, truth);
    expect(planFolder(folder, readDemoWish([]))).toEqual({ kind: 'serve', truth });
    expect(planFolder(folder, readDemoWish(['--days', '14']))).toEqual({ kind: 'serve', truth });
    expect(() => planFolder(folder, readDemoWish(['--days', '3']))).toThrow(/--fresh/);
    expect(planFolder(folder, readDemoWish(['--fresh'])).kind).toBe('make');
  });

  it('is cleared of a demo that was broken off, and of nothing else', () => {
    clearFolder(folder);
    writeFileSync(join(folder, 'packthread.sqlite'), '');
    writeFileSync(join(folder, 'my-notes.txt'), '');
    clearFolder(folder);
    expect(existsSync(join(folder, 'packthread.sqlite'))).toBe(false);
    expect(readdirSync(folder).sort()).toEqual(['demo-begun.txt', 'my-notes.txt']);
  });

  it('is left alone where it holds a plant that is no demo', () => {
    writeFileSync(join(folder, 'packthread.sqlite'), '');
    expect(() => {
      clearFolder(folder);
    }).toThrow(/no demo/);
    expect(readdirSync(folder)).toEqual(['packthread.sqlite']);
  });
});
