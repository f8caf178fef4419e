namespace BoothWatch.Outlook;

/// <summary>
/// The critical dew point of one coat over the air temperature, with the piece as warm as the air: found by the film model every
/// <see cref="GridC"/> where it is needed, and interpolated between, so that thousands of paths cost a handful of questions.
/// </summary>
/// <param name="find">Asks the film model: air temperature in, critical dew point out, both °C; not a number where it has no answer.</param>
public sealed class CriticalDewPoints(Func<double, double> find)
{
    /// <summary>Distance of the points asked for, °C. A test holds the error of the straight line between them below 0.05 °C.</summary>
    public const double GridC = 2;

    private readonly Dictionary<int, double> _known = [];

    /// <summary>Questions put to the film model so far.</summary>
    public int Asked => _known.Count;

    /// <summary>The critical dew point, °C; not a number where the film model has no answer.</summary>
    public double At(double airTemperatureC)
    {
        if (!double.IsFinite(airTemperatureC))
        {
            return double.NaN;
        }

        double place = airTemperatureC / GridC;
        int below = (int)Math.Floor(place);
        double share = place - below;
        return share == 0 ? Known(below) : ((1 - share) * Known(below)) + (share * Known(below + 1));
    }

    private double Known(int point)
    {
        if (!_known.TryGetValue(point, out double dewPointC))
        {
            dewPointC = find(point * GridC);
            _known.Add(point, dewPointC);
        }

        return dewPointC;
    }
}
