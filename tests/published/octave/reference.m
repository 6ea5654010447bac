% Reference figures for the balance loop and the simulation, worked out with GNU Octave and its control package, which
% share nothing with this program. Run as
%
%   octave --no-gui --quiet reference.m > reference.txt
%
% Each line of the output is a name and a figure; the tests compare with it, and do not need Octave.
1;
pkg load control
g = 9.80665;

function put(name, value)
  printf("%s = %.12g\n", name, value);
end

% ---- the worked vehicle: ballast slide, sprung gimbal ----
M0 = 0.42; I0 = 0.085; mb = 0.9; z = 0.08; wn = 32; zeta = 0.85; ts = 0.008;
M = M0 + mb * z; I = I0 + mb * z^2;
Ig = 9e-4; c = 0.005; k = 0.15;

% states: lean, lean rate, tilt, tilt rate, offset, offset rate, lagged lean, lagged rate; input: command
function [A, B] = plant(M, I, mb, z, H, Ig, c, k, wn, zeta, ts)
  g = 9.80665;
  A = zeros(8); B = zeros(8, 1);
  A(5, 6) = 1;
  A(6, 5) = -wn^2; A(6, 6) = -2 * zeta * wn; B(6) = wn^2;
  A(1, 2) = 1;
  A(2, :) = (mb * z * A(6, :)) / I; B(2) = mb * z * B(6) / I;
  A(2, 1) += g * M / I; A(2, 5) -= g * mb / I; A(2, 4) -= H / I;
  A(3, 4) = 1;
  A(4, 2) = H / Ig; A(4, 3) = -k / Ig; A(4, 4) = -c / Ig;
  A(7, 1) = 1 / ts; A(7, 7) = -1 / ts;
  A(8, 2) = 1 / ts; A(8, 8) = -1 / ts;
end

% closed loop over [x; u(k-1) ...]: exact hold, delay = m T + t1
function [C, f, b] = closedloop(A, B, K, T, delay)
  n = rows(A);
  m = floor(delay / T); t1 = delay - m * T;
  E = expm([A, B; zeros(1, n + 1)] * T); Phi = E(1:n, 1:n);
  early = expm([A, B; zeros(1, n + 1)] * (T - t1)); G0 = early(1:n, n + 1);
  late = expm([A, B; zeros(1, n + 1)] * t1); G1 = early(1:n, 1:n) * late(1:n, n + 1);
  f = zeros(1, n + m + 1); f(7) = K(1); f(8) = K(2); f(3) = K(3);
  C = zeros(n + m + 1);
  C(1:n, 1:n) = Phi;
  b = zeros(n + m + 1, 1);
  if m > 0
    C(1:n, n + m) += G0;
  else
    b(1:n) = G0;
  end
  C(1:n, n + m + 1) += G1;
  for past = 2:(m + 1)
    C(n + past, n + past - 1) = 1;
  end
  b(n + 1) = 1;
  C += b * f;
end

radius = @(A, B, K, T, delay) max(abs(eig(closedloop(A, B, K, T, delay))));
T = 0.005; delay = 0.018; K = [0.95, 0.04, 0.14];
[A, B] = plant(M, I, mb, z, 0.55, Ig, c, k, wn, zeta, ts);

put("spectral radius", radius(A, B, K, T, delay));
options = optimset("TolX", 1e-13);
put("gain margin up", fzero(@(x) radius(A, B, x * K, T, delay) - 1, [2, 3], options));
put("gain margin down", fzero(@(x) radius(A, B, x * K, T, delay) - 1, [0.4, 0.7], options));
put("delay margin, s", fzero(@(d) radius(A, B, K, T, delay + d) - 1, [0.03, 0.045], options));

% loop broken at the command: L(z) from the command to what the controller makes of it
[C, f, b] = closedloop(A, B, K, T, delay);
open = ss(C - b * f, b, -f, 0, T);
sensitivity = @(w) 1 / abs(1 + squeeze(freqresp(open, w)));
[w, value] = fminbnd(@(w) -sensitivity(w), 45, 52, optimset("TolX", 1e-10));
put("peak sensitivity", -value);
put("its frequency, rad/s", w);

% standard deviation of the command by noise of the lean (1 mrad) and of the rate (10 mrad/s) readings
q = (0.001 * 0.95)^2 + (0.01 * 0.04)^2;
P = dlyap(C, b * b' * q);
put("command noise, m", sqrt(f * P * f' + q));

% just unstable, and the sliver of gains that hold without the rotor
[A2, B2] = plant(M, I, mb, z, 0.35, Ig, 0.02, 0.03, wn, zeta, ts);
put("spectral radius, just unstable", radius(A2, B2, [1.4, 0.02, 0.08], T, delay));
[A3, B3] = plant(M, I, mb, z, 0, Ig, c, k, wn, zeta, ts);
put("spectral radius, rotor stopped", radius(A3, B3, [0.5915, 0.0596, 0], T, delay));
put("largest lean gain, rotor stopped, rate gain 0.0596", fzero(@(x) radius(A3, B3, [x, 0.0596, 0], T, delay) - 1, [0.6, 0.66], options));
put("largest rate gain, rotor stopped, lean gain 0.5915", fzero(@(x) radius(A3, B3, [0.5915, x, 0], T, delay) - 1, [0.0605, 0.075], options));
put("smallest rate gain, rotor stopped, lean gain 0.5915", fzero(@(x) radius(A3, B3, [0.5915, x, 0], T, delay) - 1, [0.04, 0.0595], options));

% ---- the motion with large leans, by lsode ----
lsode_options("relative tolerance", 1e-11);
lsode_options("absolute tolerance", 1e-13);
lsode_options("maximum step size", 1e-4);

% phi, phi', alpha, alpha', q, q', lagged lean, lagged rate; drive: 0 slide, 1 upright arm
function d = vehicle(x, u, p)
  g = 9.80665;
  qq = p.wn^2 * (u - x(5)) - 2 * p.zeta * p.wn * x(6);
  if p.arm
    L = p.L;
    e = L * sin(x(5)); ed = L * cos(x(5)) * x(6); edd = L * (cos(x(5)) * qq - sin(x(5)) * x(6)^2);
    zz = p.h + L * cos(x(5)); zd = -L * sin(x(5)) * x(6); zdd = -L * (sin(x(5)) * qq + cos(x(5)) * x(6)^2);
  else
    e = x(5); ed = x(6); edd = qq; zz = p.h; zd = 0; zdd = 0;
  end
  Mz = p.M0 + p.mb * zz;
  moment = g * Mz * sin(x(1)) - p.mb * g * e * cos(x(1)) + p.mb * (zz * edd - e * zdd) ...
    - p.H * cos(x(3)) * x(4) - 2 * p.mb * (e * ed + zz * zd) * x(2);
  a = moment / (p.I0 + p.mb * (e^2 + zz^2));
  b = (p.H * cos(x(3)) * x(2) - p.c * x(4) - p.k * x(3)) / p.Ig;
  d = [x(2); a; x(4); b; x(6); qq; (x(1) - x(7)) / p.ts; (x(2) - x(8)) / p.ts];
end

% sampled controller with travel and delay; the command switches at its exact times
function lean = controlled(p, K, T, delay, travel, x, samples)
  m = floor(delay / T); t1 = delay - m * T;
  u = zeros(1, samples + m + 3); lean = zeros(1, samples + 1); lean(1) = x(1);
  for s = 0:(samples - 1)
    wanted = K(1) * x(7) + K(2) * x(8) + K(3) * x(3);
    u(s + m + 3) = min(max(wanted, -travel), travel);
    before = u(s + 2); now = u(s + 3);
    if t1 > 0
      y = lsode(@(x, t) vehicle(x, before, p), x, [0, t1]); x = y(2, :)';
    end
    y = lsode(@(x, t) vehicle(x, now, p), x, [0, T - t1]); x = y(2, :)';
    lean(s + 2) = x(1);
  end
end

p = struct("M0", M0, "I0", I0, "mb", mb, "h", z, "L", 1, "arm", false, "H", 0.55, "Ig", Ig, "c", c, "k", k, ...
  "wn", wn, "zeta", zeta, "ts", ts);
start = zeros(8, 1); start(1) = 0.06; start(7) = 0.06;
lean = controlled(p, K, T, delay, 0.06, start, 200);
for s = [10, 50, 100, 200]
  put(sprintf("slide, travel 0.06 m, lean after %d samples from 0.06 rad", s), lean(s + 1));
end
p.arm = true; p.h = 0.03; p.L = 0.1;
start(1) = 0.08; start(7) = 0.08; start(3) = 0.2;
lean = controlled(p, [9.5, 0.4, 1.4], T, 0.0153, 1.2, start, 120);
for s = [10, 40, 80, 120]
  put(sprintf("arm, travel 1.2 rad, lean after %d samples from 0.08 rad, tilt 0.2 rad", s), lean(s + 1));
end
