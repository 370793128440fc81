import { describe, expect, test } from 'vitest';
import { dataFolder, defaultWorkspaceFile } from '#platform/folders/workspace-file.ts';

const at = (platform: NodeJS.Platform, env: Record<string, string> = {}) => ({ platform, env, home: '/home/someone' });

describe('where a workspace lies when nobody names one', () => {
  // XDG Base Directory Specification 0.8: $XDG_DATA_HOME, else $HOME/.local/share; relative paths there are to be ignored.
  test('Linux, by the XDG rules', () => {
    expect(dataFolder(at('linux'))).toBe('/home/someone/.local/share/fieldback');
    expect(dataFolder(at('linux', { XDG_DATA_HOME: '/data' }))).toBe('/data/fieldback');
    expect(dataFolder(at('linux', { XDG_DATA_HOME: 'data' }))).toBe('/home/someone/.local/share/fieldback');
    expect(dataFolder(at('linux', { XDG_DATA_HOME: '' }))).toBe('/home/someone/.local/share/fieldback');
  });

  test('macOS and Windows, where their programs keep data', () => {
    expect(dataFolder(at('darwin'))).toBe('/home/someone/Library/Application Support/Fieldback');
    expect(dataFolder(at('win32', { LOCALAPPDATA: '/local' }))).toBe('/local/Fieldback');
    expect(dataFolder(at('win32'))).toBe('/home/someone/AppData/Local/Fieldback');
  });

  test('FIELDBACK_FILE goes before all', () => {
    expect(defaultWorkspaceFile(at('linux', { FIELDBACK_FILE: '/tmp/my own.fieldback' }))).toBe('/tmp/my own.fieldback');
    expect(defaultWorkspaceFile(at('linux'))).toBe('/home/someone/.local/share/fieldback/workspace.fieldback');
  });
});
