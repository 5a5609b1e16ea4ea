/** Rows of mechanisms and of causes that depart from the dossier on purpose. See `corrections.ts` for how to read a line. */
export const correctionsOfMechanisms: string = `
# mechanisms
spark | background | 0.98 0.018 0.002 | 0.9989 0.001 0.0001 | 40 | gross
injection | background | 0.978 0.018 0.0005 0.0035 | 0.9986 0.001 0.00005 0.00035 | 40 | gross
induction | background | 0.96 0.01 0.027 0.003 | 0.9989 0.0008 0.0001 0.0002 | 40 | gross
sealing | background | 0.97 0.004 0.006 0.016 0.003 0.001 | 0.9387 0.06 0.0002 0.0003 0.0005 0.0002 0.0001 | 40 | gross
valve_motion | background | 0.9874 0.005 0.005 0.0003 0.0003 0.002 | 0.97974 0.02 0.0001 0.0001 0.000005 0.000005 0.00005 | 40 | gross
cam_phase | background | 0.9927 0.006 0.001 0.0003 | 0.99968 0.0003 0.000015 0.000005 | 40 | gross
coil_circuit | background | 0.994 0.006 | 0.9994 0.0006 | 40 | gross
injector_circuit | background | 0.996 0.004 | 0.9996 0.0004 | 40 | gross
detection | background | 0.985 0.015 | 0.9985 0.0015 | 40 | gross
charge | row 16: valve_motion=slightly_uneven | - | 0.9 0.08 0.01 0.01 | 15 | mild
charge | row 17: sealing=slight_leak | - | 0.94 0.045 0.005 0.01 | 15 | mild
# causes
runner-air-leak | induction | 0.04 0.93 0.02 0.01 | 0.06 0.93 0.005 0.005 | 10 | gross
egr-pcv-runner | induction | 0.05 0.1 0.05 0.8 | 0.08 0.1 0.02 0.8 | 4 | gross
chamber-deposit | sealing | 0.6 0.14 0.2 0.03 0.015 0.015 | 0.52 0.12 0.13 0.19 0.02 0.01 0.01 | 4 | mild
plug-cracked-loose | sealing | 0.88 0.006 0.012 0.095 0.004 0.003 | 0.86 0.11 0.0005 0.0005 0.028 0.0005 0.0005 | 10 | mild
not-listed | sealing | 0.8 0.04 0.05 0.06 0.03 0.02 | 0.72 0.1 0.04 0.05 0.05 0.025 0.015 | 4 | mild
not-listed | valve_motion | 0.82 0.06 0.06 0.015 0.015 0.03 | 0.78 0.04 0.06 0.06 0.015 0.015 0.03 | 4 | mild
exhaust-valve-burnt | sealing | 0.02 0.01 0.95 0.01 0.005 0.005 | 0.015 0.025 0.003 0.95 0.003 0.002 0.002 | 12 | mild
intake-valve-leak | sealing | 0.02 0.95 0.01 0.01 0.005 0.005 | 0.015 0.025 0.95 0.003 0.003 0.002 0.002 | 6 | mild
valve-seat | sealing | 0.08 0.3 0.55 0.03 0.02 0.02 | 0.04 0.08 0.29 0.54 0.02 0.015 0.015 | 4 | mild
valve-seat | valve_motion | 0.9 0.03 0.03 0.01 0.01 0.02 | 0.84 0.06 0.03 0.03 0.01 0.01 0.02 | 4 | mild
ring-land | sealing | 0.05 0.01 0.01 0.92 0.005 0.005 | 0.02 0.045 0.005 0.005 0.92 0.0025 0.0025 | 6 | mild
piston-holed | sealing | 0.01 0.005 0.005 0.97 0.005 0.005 | 0.004 0.006 0.005 0.005 0.97 0.005 0.005 | 4 | mild
gasket-coolant | sealing | 0.2 0.005 0.005 0.01 0.77 0.01 | 0.13 0.08 0.003 0.003 0.007 0.77 0.007 | 6 | mild
gasket-adjacent | sealing | 0.02 0.005 0.005 0.01 0.03 0.93 | 0.01 0.02 0.003 0.003 0.007 0.027 0.93 | 4 | mild
head-cracked | sealing | 0.18 0.05 0.14 0.01 0.6 0.02 | 0.11 0.08 0.05 0.14 0.005 0.6 0.015 | 4 | mild
cam-sensor-phaser | cam_phase | 0.28 0.7 0.015 0.005 | 0.29 0.7 0.008 0.002 | 4 | gross
spring-broken | valve_motion | 0.1 0.05 0.05 0.01 0.01 0.78 | 0.06 0.04 0.05 0.05 0.01 0.01 0.78 | 6 | mild
spring-broken | sealing | 0.72 0.09 0.14 0.03 0.01 0.01 | 0.62 0.12 0.09 0.14 0.02 0.005 0.005 | 6 | mild
lash-tight | sealing | 0.12 0.3 0.54 0.02 0.01 0.01 | 0.05 0.09 0.3 0.54 0.01 0.005 0.005 | 5 | mild
lifter-collapsed | valve_motion | 0.08 0.45 0.41 0.01 0.01 0.04 | 0.03 0.05 0.45 0.41 0.01 0.01 0.04 | 7 | mild
rocker-dislodged | valve_motion | 0.02 0.2 0.2 0.27 0.29 0.02 | 0.01 0.01 0.2 0.2 0.27 0.29 0.02 | 5 | mild
cam-lobe-worn | valve_motion | 0.03 0.42 0.45 0.04 0.05 0.01 | 0.01 0.02 0.42 0.45 0.04 0.05 0.01 | 6 | mild
cam-bridge-cracked | valve_motion | 0.05 0.5 0.38 0.01 0.01 0.05 | 0.02 0.03 0.5 0.38 0.01 0.01 0.05 | 4 | mild
cam-bridge-cracked | cam_phase | 0.94 0.02 0.035 0.005 | 0.98 0.002 0.016 0.002 | 4 | gross
cam-lobe-slipped | valve_motion | 0.93 0.02 0.02 0.01 0.01 0.01 | 0.9 0.03 0.02 0.02 0.01 0.01 0.01 | 4 | mild
cam-lobe-slipped | sealing | 0.925 0.035 0.016 0.017 0.004 0.003 | 0.87 0.07 0.035 0.016 0.005 0.002 0.002 | 4 | mild
variable-lift-fault | valve_motion | 0.1 0.6 0.24 0.02 0.02 0.02 | 0.06 0.04 0.6 0.24 0.02 0.02 0.02 | 4 | mild
deactivation-stuck | valve_motion | 0.08 0.16 0.16 0.29 0.28 0.03 | 0.05 0.03 0.16 0.16 0.29 0.28 0.03 | 7 | mild
`;
