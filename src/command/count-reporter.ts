/**
 * Counts a test run for `npm test` and writes the count as JSON to the file that COUNT_FILE names. A file or a
 * suite that breaks outside its tests counts as a failure, as does an error that no test caught.
 */
import { writeFileSync } from 'node:fs';
import type { Reporter, TestModule } from 'vitest/node';

export interface Count {
  readonly passed: number;
  readonly failed: number;
  readonly skipped: number;
}

export default class CountReporter implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], unhandled: readonly unknown[]): void {
    const tests = modules.flatMap((module) => [...module.children.allTests()]);
    const ended = (state: string) => tests.filter((test) => test.result().state === state).length;
    const groups = modules.flatMap((module) => [module, ...module.children.allSuites()]);
    const broken = groups.filter((group) => group.errors().length > 0).length;
    const failed = ended('failed') + broken + unhandled.length;
    const count: Count = { passed: ended('passed'), failed, skipped: tests.length - ended('passed') - ended('failed') };
    writeFileSync(process.env.COUNT_FILE ?? 'test-count.json', JSON.stringify(count));
  }
}
