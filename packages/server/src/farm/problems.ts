/** Problems of a folder and of a first sentence, as the server answers them. */
import { problemSentence, refusalSentence } from '@leywright/api';
import type { Problem } from '@leywright/book';
import type { FirstProblem } from '@leywright/planner';
import type { HttpProblem } from '../app/answer.ts';

export function folderProblem(problem: Problem): HttpProblem {
  const { code, gravity, file, line, column, found, nearest } = problem;
  return { code, sentence: problemSentence(problem), file, line, column, found, nearest, gravity };
}

export function firstProblem(problem: FirstProblem): HttpProblem {
  const { code, field, found, figures } = problem;
  return {
    code,
    sentence: refusalSentence(code, { field, found, ...figures }),
    file: null,
    line: null,
    column: field,
    found,
    nearest: [],
    gravity: 'stops',
  };
}
