using System.Globalization;
using BoothWatch.Solvents;

namespace BoothWatch.Film;

/// <summary>One drying run: a coat lands in one air and is followed until it sets.</summary>
public static class DryingRun
{
    /// <summary>Diffusivity of solvents in a film about to set, m²/s. Assumed 1e-10 (cellulose nitrate at half polymer: 1e-11 to 1e-9).</summary>
    public const double FilmDiffusivityM2PerS = 1e-10;

    private const int MostSteps = 20000;

    /// <summary>Simulates one coat.</summary>
    /// <param name="conditions">The coat and its surroundings.</param>
    /// <param name="airVapourPressurePa">Partial pressure of water vapour in the air, Pa.</param>
    /// <param name="parameters">Model parameters; null: <see cref="FilmParameters.Default"/>.</param>
    /// <param name="keepTrajectory">True to keep every accepted step for plots and replay.</param>
    /// <exception cref="ArgumentException">A condition is out of range; the message names it.</exception>
    /// <exception cref="DryingFailedException">The solver gave up.</exception>
    public static DryingResult Simulate(
        CoatConditions conditions, double airVapourPressurePa, FilmParameters? parameters = null, bool keepTrajectory = false)
    {
        ArgumentNullException.ThrowIfNull(conditions);
        CoatConditionsCheck.Throw(conditions, airVapourPressurePa);
        return Follow(conditions, airVapourPressurePa, [], parameters ?? FilmParameters.Default, keepTrajectory);
    }

    /// <summary>Simulates one coat in air that changes while it dries. The piece begins at its temperature and follows the air by itself.</summary>
    /// <param name="conditions">The coat and its surroundings; of the air only pressure and speed are taken from here.</param>
    /// <param name="air">The air, from the landing on.</param>
    /// <param name="parameters">Model parameters; null: <see cref="FilmParameters.Default"/>.</param>
    /// <param name="keepTrajectory">True to keep every accepted step for plots and replay.</param>
    /// <exception cref="ArgumentException">A condition is out of range; the message names it.</exception>
    /// <exception cref="DryingFailedException">The solver gave up.</exception>
    public static DryingResult Simulate(CoatConditions conditions, AirCourse air, FilmParameters? parameters = null, bool keepTrajectory = false)
    {
        ArgumentNullException.ThrowIfNull(conditions);
        ArgumentNullException.ThrowIfNull(air);
        conditions = conditions with { AirTemperatureC = air.Landing.TemperatureC };
        AirChange[] changes = new AirChange[air.Steps.Count];
        for (int i = 0; i < changes.Length; i++)
        {
            AirStep step = air.Steps[i];
            changes[i] = new AirChange(step.FromS, step.TemperatureC, AirCourse.VapourPressurePa(step));
            CoatConditionsCheck.Throw(conditions with { AirTemperatureC = step.TemperatureC }, changes[i].VapourPa);
        }

        return Follow(conditions, changes[0].VapourPa, changes.AsSpan(1).ToArray(), parameters ?? FilmParameters.Default, keepTrajectory);
    }

    private static DryingResult Follow(
        CoatConditions conditions, double airVapourPressurePa, AirChange[] changes, FilmParameters parameters, bool keepTrajectory)
    {
        DryingFilm film = new(conditions, airVapourPressurePa, parameters);
        double setVolume = Math.Max(film.PolymerVolume / parameters.SetPolymerFraction, parameters.DryVolumeFraction * film.LandedVolume);
        RosenbrockSolver solver = new(film, parameters.Tolerance, parameters.LongestRunS / 20);
        double landingC = conditions.LandingTemperatureC ?? conditions.AirTemperatureC;
        film.Initial(solver.State, landingC + PhysicalConstants.ZeroCelsiusK, conditions.PieceTemperatureC + PhysicalConstants.ZeroCelsiusK);
        return new Follower(film, solver, setVolume, parameters, keepTrajectory, changes).Run();
    }

    /// <summary>The air from a moment on.</summary>
    private readonly record struct AirChange(double AtS, double TemperatureC, double VapourPa);

    private sealed class Follower(DryingFilm film, RosenbrockSolver solver, double setVolume, FilmParameters parameters, bool keepTrajectory, AirChange[] changes)
    {
        /// <summary>A change so near to the end of a step counts as reached, s.</summary>
        private const double Reached = 1e-9;

        private readonly double[] _previous = new double[film.Size];
        private readonly double[] _previousRate = new double[film.Size];
        private readonly List<DryingPoint> _trajectory = [];
        private double _lowestK = double.PositiveInfinity;
        private double _mostWater;
        private int _nextChange;

        public DryingResult Run()
        {
            Note(0, solver.State[film.TemperatureIndex], 0, film.LandedVolume);
            if (film.LandedVolume <= setVolume)
            {
                return Result(0, 0, solver.State[film.TemperatureIndex]);
            }

            solver.Refresh();
            while (solver.TimeS < parameters.LongestRunS)
            {
                if (solver.Steps >= MostSteps)
                {
                    throw new DryingFailedException(string.Create(
                        CultureInfo.InvariantCulture, $"drying film solver (Rosenbrock, RODAS): {MostSteps} steps reached only {solver.TimeS:0.#} s"));
                }

                double start = solver.TimeS;
                double step = solver.Step(UntilChange(), _previous, _previousRate);
                double volume = film.Volume(solver.State);
                double share = volume <= setVolume ? SetShare(step, volume) : 1;
                LookInside(step, share);
                double water = At(film.WaterIndex, step, share);
                double temperatureK = At(film.TemperatureIndex, step, share);
                Note(start + (share * step), temperatureK, water, volume <= setVolume ? setVolume : volume);
                if (volume <= setVolume)
                {
                    return Result(start + (share * step), water, temperatureK);
                }
            }

            return Result(null, solver.State[film.WaterIndex], solver.State[film.TemperatureIndex]);
        }

        /// <summary>Lets the air change where that is due; then the end of what the next step may span, s.</summary>
        private double UntilChange()
        {
            bool changed = false;
            for (; _nextChange < changes.Length && changes[_nextChange].AtS <= solver.TimeS + Reached; _nextChange++)
            {
                film.Surround(changes[_nextChange].TemperatureC, changes[_nextChange].VapourPa);
                changed = true;
            }

            if (changed)
            {
                solver.Refresh();
            }

            return _nextChange < changes.Length ? Math.Min(changes[_nextChange].AtS, parameters.LongestRunS) : parameters.LongestRunS;
        }

        private DryingResult Result(double? setS, double water, double lastK) => new()
        {
            TimeToSetS = setS,
            LowestFilmTemperatureC = _lowestK - PhysicalConstants.ZeroCelsiusK,
            LastFilmTemperatureC = lastK - PhysicalConstants.ZeroCelsiusK,
            WaterAtSetGPerM2 = DryingFilm.MolesToGrams(Math.Max(water, 0)),
            PeakWaterGPerM2 = DryingFilm.MolesToGrams(Math.Max(_mostWater, 0)),
            DryingPeclet = setS is > 0 ? film.LandedVolume * film.LandedVolume / (FilmDiffusivityM2PerS * setS.Value) : 0,
            Steps = solver.Steps,
            Trajectory = _trajectory,
        };

        private void Note(double timeS, double temperatureK, double water, double volume)
        {
            _lowestK = Math.Min(_lowestK, temperatureK);
            _mostWater = Math.Max(_mostWater, water);
            if (keepTrajectory)
            {
                _trajectory.Add(new DryingPoint(
                    timeS,
                    temperatureK - PhysicalConstants.ZeroCelsiusK,
                    DryingFilm.MolesToGrams(Math.Max(water, 0)),
                    film.PolymerVolume / volume,
                    (volume - film.PolymerVolume) / (film.LandedVolume - film.PolymerVolume)));
            }
        }

        /// <summary>Looks for the extremes inside a step in which the slope changes sign.</summary>
        private void LookInside(double step, double share)
        {
            bool coldest = _previousRate[film.TemperatureIndex] < 0 && solver.Rate[film.TemperatureIndex] > 0;
            bool wettest = _previousRate[film.WaterIndex] > 0 && solver.Rate[film.WaterIndex] < 0;
            for (int i = 1; (coldest || wettest) && i < 8; i++)
            {
                double at = share * i / 8;
                _lowestK = coldest ? Math.Min(_lowestK, At(film.TemperatureIndex, step, at)) : _lowestK;
                _mostWater = wettest ? Math.Max(_mostWater, At(film.WaterIndex, step, at)) : _mostWater;
            }
        }

        /// <summary>Share of the last step at which the volume reached the set volume: bisection on the cubic through both ends.</summary>
        private double SetShare(double step, double volume)
        {
            double before = film.Volume(_previous);
            double beforeRate = film.VolumeRate(_previousRate);
            double rate = film.VolumeRate(solver.Rate);
            double low = 0;
            double high = 1;
            for (int i = 0; i < 50; i++)
            {
                double middle = (low + high) / 2;
                (low, high) = Hermite(before, beforeRate, volume, rate, step, middle) > setVolume ? (middle, high) : (low, middle);
            }

            return high;
        }

        private double At(int index, double step, double share) => share == 1
            ? solver.State[index]
            : Hermite(_previous[index], _previousRate[index], solver.State[index], solver.Rate[index], step, share);

        private static double Hermite(double before, double beforeRate, double after, double afterRate, double step, double share)
        {
            double left = 1 - share;
            return (left * left * ((before * (1 + (2 * share))) + (beforeRate * step * share)))
                + (share * share * ((after * (1 + (2 * left))) - (afterRate * step * left)));
        }
    }
}
