namespace BoothWatch.Film;

/// <summary>Integrates a <see cref="DryingFilm"/> step by step with RODAS, a stiffly accurate, L-stable Rosenbrock method of order 4(3).</summary>
/// <remarks>
/// Coefficients: E. Hairer and G. Wanner, Solving Ordinary Differential Equations II, 2nd edition, section IV.7 and program RODAS.
/// The linear systems use the structure: the tridiagonal substrate is eliminated towards the film, the small core is solved densely.
/// All work space is allocated once.
/// </remarks>
internal sealed class RosenbrockSolver
{
    private const double Gamma = 0.25;
    private const int Stages = 6;
    private const double Safety = 0.9;
    private const double SmallestStepS = 1e-10;

    private static readonly double[] A =
    [
        1.544,
        0.9466785280815826, 0.2557011698983284,
        3.314825187068521, 2.896124015972201, 0.9986419139977817,
        1.221224509226641, 6.019134481288629, 12.53708332932087, -0.6878860361058950,
        1.221224509226641, 6.019134481288629, 12.53708332932087, -0.6878860361058950, 1,
    ];

    private static readonly double[] C =
    [
        -5.6688,
        -2.430093356833875, -0.2063599157091915,
        -0.1073529058151375, -9.594562251023355, -20.47028614809616,
        7.496443313967647, -10.24680431464352, -33.99990352819905, 11.70890893206160,
        8.083246795921522, -7.981132988064893, -31.52159432874371, 16.31930543123136, -6.058818238834054,
    ];

    private readonly DryingFilm _film;
    private readonly double _tolerance;
    private readonly double _longestStepS;
    private readonly double[] _scale;
    private readonly double[][] _stage = new double[Stages][];
    private readonly double[] _trial;
    private readonly double[] _core;
    private readonly double[] _above;
    private readonly double[] _own;
    private readonly double[] _below;
    private readonly double[] _pivotOwn;
    private readonly double[] _jacobian;
    private readonly double[] _nextState;
    private readonly DenseLu _lu;
    private double _stepS = 1e-3;
    private bool _rejected;

    /// <summary>Prepares the solver.</summary>
    /// <param name="film">The equations.</param>
    /// <param name="tolerance">Relative tolerance.</param>
    /// <param name="longestStepS">Longest step, s.</param>
    public RosenbrockSolver(DryingFilm film, double tolerance, double longestStepS)
    {
        _film = film;
        _tolerance = tolerance;
        _longestStepS = longestStepS;
        int size = film.Size;
        State = new double[size];
        Rate = new double[size];
        _nextState = new double[size];
        _trial = new double[size];
        _scale = new double[size];
        for (int i = 0; i < Stages; i++)
        {
            _stage[i] = new double[size];
        }

        _jacobian = new double[film.CoreSize * film.CoreSize];
        _core = new double[film.CoreSize * film.CoreSize];
        _lu = new DenseLu(film.CoreSize);
        _above = new double[film.Cells];
        _own = new double[film.Cells];
        _below = new double[film.Cells];
        _pivotOwn = new double[film.Cells];

        // absolute tolerances: a hundredth of the solvent, 5 K, 1 g/m² of water, each times the relative tolerance
        double solvent = 0;
        foreach (double moles in film.LandedMoles)
        {
            solvent += moles;
        }

        Array.Fill(_scale, 0.01 * solvent, 0, film.WaterIndex);
        _scale[film.WaterIndex] = DryingFilm.GramsToMoles(1);
        Array.Fill(_scale, 5, film.TemperatureIndex, size - film.TemperatureIndex);
    }

    /// <summary>Time, s.</summary>
    public double TimeS { get; private set; }

    /// <summary>The state at <see cref="TimeS"/>.</summary>
    public double[] State { get; private set; }

    /// <summary>Its rates of change.</summary>
    public double[] Rate { get; private set; }

    /// <summary>Accepted steps so far.</summary>
    public int Steps { get; private set; }

    /// <summary>Makes rates and Jacobian belong to <see cref="State"/> and the air; call after filling the state, and after the air has changed.</summary>
    public void Refresh()
    {
        _film.SubstrateJacobian(_above, _own, _below);
        Evaluate();
    }

    /// <summary>Takes one accepted step, not beyond <paramref name="endS"/>. Afterwards <paramref name="previous"/> and <paramref name="previousRate"/> hold the start of the step.</summary>
    /// <exception cref="DryingFailedException">The step became too small or a value is not finite.</exception>
    public double Step(double endS, double[] previous, double[] previousRate)
    {
        for (; ; )
        {
            double wanted = Math.Min(_stepS, _longestStepS);
            double step = Math.Min(wanted, endS - TimeS);
            double error = Try(step);
            double factor = error > 0 ? Math.Clamp(Safety * Math.Pow(error, -0.25), 0.1, 6) : 6;
            if (error <= 1)
            {
                State.CopyTo(previous, 0);
                Rate.CopyTo(previousRate, 0);
                _nextState.CopyTo(State, 0);
                Evaluate();
                TimeS += step;
                Steps++;

                // A step cut short by the end asked for says nothing against a longer one.
                double next = step * (_rejected ? Math.Min(factor, 1) : factor);
                _stepS = step < wanted && !_rejected ? Math.Max(next, wanted) : next;
                _rejected = false;
                return step;
            }

            _rejected = true;
            _stepS = step * factor;
            if (_stepS < SmallestStepS)
            {
                throw new DryingFailedException(string.Create(
                    System.Globalization.CultureInfo.InvariantCulture,
                    $"drying film solver (Rosenbrock, RODAS): step fell below {SmallestStepS} s at {TimeS:0.###} s, film temperature {State[_film.TemperatureIndex]:0.##} K"));
            }
        }
    }

    private void Evaluate()
    {
        _film.Evaluate(State, Rate);
        _film.Jacobian(_jacobian);
    }

    private double Try(double step)
    {
        Factor(1 / (step * Gamma));
        double inverseStep = 1 / step;
        int size = _film.Size;
        int at = 0;
        for (int s = 0; s < Stages; s++)
        {
            double[] k = _stage[s];
            if (s == 0)
            {
                Rate.CopyTo(k, 0);
            }
            else
            {
                State.CopyTo(_trial, 0);
                for (int j = 0; j < s; j++)
                {
                    double a = A[at + j];
                    double[] earlier = _stage[j];
                    for (int i = 0; i < size; i++)
                    {
                        _trial[i] += a * earlier[i];
                    }
                }

                _film.Evaluate(_trial, k);
                for (int j = 0; j < s; j++)
                {
                    double c = C[at + j] * inverseStep;
                    double[] earlier = _stage[j];
                    for (int i = 0; i < size; i++)
                    {
                        k[i] += c * earlier[i];
                    }
                }

                at += s;
            }

            Solve(k);
        }

        // stiffly accurate: the last trial point plus the last stage is the new state, and the last stage alone the error
        double worst = 0;
        double[] last = _stage[Stages - 1];
        for (int i = 0; i < size; i++)
        {
            double next = _trial[i] + last[i];
            _nextState[i] = next;
            double allowed = _tolerance * (_scale[i] + (i < _film.TemperatureIndex ? Math.Max(Math.Abs(next), Math.Abs(State[i])) : 0));
            double ratio = Math.Abs(last[i]) / allowed;
            if (!double.IsFinite(ratio))
            {
                return double.PositiveInfinity;
            }

            worst = Math.Max(worst, ratio);
        }

        return worst;
    }

    private void Factor(double diagonal)
    {
        int core = _film.CoreSize;
        int temperature = _film.TemperatureIndex;
        for (int i = 0; i < _core.Length; i++)
        {
            _core[i] = -_jacobian[i];
        }

        for (int i = 0; i < core; i++)
        {
            _core[(i * core) + i] += diagonal;
        }

        for (int i = _film.Cells - 1; i >= 0; i--)
        {
            double own = diagonal - _own[i];
            if (i < _film.Cells - 1)
            {
                own -= _below[i] * _above[i + 1] / _pivotOwn[i + 1];
            }

            _pivotOwn[i] = own;
        }

        _core[(temperature * core) + temperature] -= _film.FilmBySubstrate * _above[0] / _pivotOwn[0];
        _lu.Factor(_core);
    }

    private void Solve(double[] k)
    {
        int core = _film.CoreSize;
        for (int i = _film.Cells - 2; i >= 0; i--)
        {
            k[core + i] += _below[i] * k[core + i + 1] / _pivotOwn[i + 1];
        }

        k[_film.TemperatureIndex] += _film.FilmBySubstrate * k[core] / _pivotOwn[0];
        _lu.Solve(k);
        double aboveValue = k[_film.TemperatureIndex];
        for (int i = 0; i < _film.Cells; i++)
        {
            aboveValue = (k[core + i] + (_above[i] * aboveValue)) / _pivotOwn[i];
            k[core + i] = aboveValue;
        }
    }
}
