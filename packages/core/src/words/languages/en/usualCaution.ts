/** Goes with every list of proposed tests and repairs, whatever their own cautions. */
export const usualCaution: string =
  "Follow the vehicle maker's procedure and your local regulations; leave work that needs a licence to licensed people. Where this program differs from them, they take precedence.";
