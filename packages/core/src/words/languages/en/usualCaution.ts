/** Goes with every list of proposed tests and repairs, whatever their own cautions. */
export const usualCaution: string =
  "Follow the vehicle maker's procedure and the rules of your place; leave to licensed people what is theirs. Where this differs, they are right.";
