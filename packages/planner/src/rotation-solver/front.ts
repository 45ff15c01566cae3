/** Planning the rotation, gathered under one word for who is outside: read a problem, solve it, hold it against its rules, explain it. */
export { coversForFarm } from '../cover-choice/farm-covers.ts';
export { bestSequences } from '../rotation-explain/best-sequences.ts';
export { cellChoices } from '../rotation-explain/cell-choices.ts';
export { canKeep, conflictOf, conflictsOf, liftedOf } from '../rotation-explain/conflict.ts';
export { priceOfPin, priceOfRule } from '../rotation-explain/rule-price.ts';
export { whyNot } from '../rotation-explain/why-not.ts';
export { behindProposal } from '../rotation-farm/explain.ts';
export { farmProblem } from '../rotation-farm/farm-problem.ts';
export { farmWithPlan } from '../rotation-farm/lay-plan.ts';
export { conflictOn, findingsOfPlan, proposeRotation } from '../rotation-farm/propose.ts';
export { heldCourse } from '../rotation-farm/rotation-farm.ts';
export { scoreOfPlan, softRules } from '../rotation-model/score.ts';
export { readRotationProblem } from '../rotation-problem/read-problem.ts';
export { datedBreaches } from '../rotation-proof/check-dates.ts';
export { planBreaches } from '../rotation-proof/check-plan.ts';
export { bestOfAll, planCountOf } from '../rotation-proof/exhaustive.ts';
export { solveRotation } from './solve-rotation.ts';
