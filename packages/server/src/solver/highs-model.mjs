// A linear model as HiGHS takes it, and what HiGHS says in our words. Plain JavaScript, as the thread is.

/** @param {import('highs').Highs} highs @param {import('@leywright/planner').LinearModel} model @returns {import('highs').ModelData} */
export function modelOf(highs, model) {
  return {
    numCols: model.columnCount,
    numRows: model.rowCount,
    sense: highs.constants.objectiveSense.minimize,
    offset: model.offsetScore,
    colCost: model.costWeight,
    colLower: model.columnLow,
    colUpper: model.columnHigh,
    rowLower: model.rowLow,
    rowUpper: model.rowHigh,
    integrality: model.wholeIndex,
    matrix: {
      format: 'csr',
      numRows: model.rowCount,
      numCols: model.columnCount,
      starts: model.rowStarts,
      indices: model.entryIndex,
      values: model.entryValue,
    },
  };
}

/** @param {import('highs').HighsConstants['modelStatus']} known @param {number} status */
export function endingOf(known, status) {
  if (status === known.optimal) return 'optimal';
  if (status === known.infeasible || status === known.unboundedOrInfeasible) return 'infeasible';
  if (status === known.interrupted) return 'stopped';
  if (status === known.timeLimit || status === known.iterationLimit || status === known.solutionLimit) return 'time';
  return 'failed';
}

/**
 * Name and message alone: a stack of this program holds its whole source in one line.
 * @param {unknown} error
 */
export function failureOf(error) {
  return error instanceof Error ? `${error.name}: ${error.message.slice(0, 200)}` : 'unknown';
}
