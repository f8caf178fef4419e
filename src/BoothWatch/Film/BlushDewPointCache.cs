using BoothWatch.Solvents;

namespace BoothWatch.Film;

/// <summary>
/// Remembers blush dew points on a grid of air temperature, piece temperature and pressure. Between grid points the tangent serves;
/// a test holds its error below 0.05 °C. Not safe for two threads at once.
/// </summary>
internal sealed class BlushDewPointCache(FilmParameters parameters)
{
    /// <summary>Grid of the air and of the piece temperature, °C.</summary>
    public const double TemperatureGridC = 0.5;

    /// <summary>Grid of the pressure, Pa.</summary>
    public const double PressureGridPa = 500;

    /// <summary>Most entries; when full, all are forgotten.</summary>
    public const int Capacity = 1024;

    private readonly Dictionary<Key, BlushDewPoint> _known = [];

    /// <summary>Entries now.</summary>
    public int Count => _known.Count;

    /// <summary>The blush dew point of the nearest grid point; computed when not yet known.</summary>
    public BlushDewPoint Near(CoatConditions conditions)
    {
        Key key = new(
            conditions.Mix,
            conditions.WetFilmUm,
            conditions.Substrate,
            conditions.AirSpeedMPerS,
            (int)Math.Round(conditions.AirTemperatureC / TemperatureGridC),
            (int)Math.Round(conditions.PieceTemperatureC / TemperatureGridC),
            (int)Math.Round(conditions.PressurePa / PressureGridPa));
        if (_known.TryGetValue(key, out BlushDewPoint? known))
        {
            return known;
        }

        if (_known.Count >= Capacity)
        {
            _known.Clear();
        }

        BlushDewPoint found = BlushDewPoint.Find(
            conditions with
            {
                AirTemperatureC = key.AirStep * TemperatureGridC,
                PieceTemperatureC = key.PieceStep * TemperatureGridC,
                PressurePa = key.PressureStep * PressureGridPa,
            },
            parameters);
        _known.Add(key, found);
        return found;
    }

    private readonly record struct Key(
        Mix Mix, double WetFilmUm, Substrate Substrate, double AirSpeedMPerS, int AirStep, int PieceStep, int PressureStep);
}
