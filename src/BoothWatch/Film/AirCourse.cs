using System.Globalization;
using BoothWatch.Air;

namespace BoothWatch.Film;

/// <summary>Air that changes while a coat dries, step by step. The last step goes on.</summary>
public sealed class AirCourse
{
    /// <summary>A course of steps.</summary>
    /// <param name="steps">The steps; the first begins with the coat, at 0 s, and each begins after the one before.</param>
    /// <exception cref="ArgumentException">There is no step, the first does not begin at 0 s, or one does not follow the one before.</exception>
    public AirCourse(IReadOnlyList<AirStep> steps)
    {
        ArgumentNullException.ThrowIfNull(steps);
        if (steps.Count == 0 || steps[0].FromS != 0)
        {
            throw new ArgumentException("the air of a drying run has no step at 0 s; give the air in which the coat lands first");
        }

        for (int i = 1; i < steps.Count; i++)
        {
            if (!(steps[i].FromS > steps[i - 1].FromS))
            {
                throw new ArgumentException(string.Create(
                    CultureInfo.InvariantCulture, $"an air step at {steps[i].FromS} s follows one at {steps[i - 1].FromS} s; give rising times"));
            }
        }

        Steps = steps;
    }

    /// <summary>The steps, in order of time.</summary>
    public IReadOnlyList<AirStep> Steps { get; }

    /// <summary>The air in which the coat lands.</summary>
    public AirStep Landing => Steps[0];

    /// <summary>Air that does not change.</summary>
    /// <param name="temperatureC">Air temperature, °C.</param>
    /// <param name="dewPointC">Dew point, °C.</param>
    public static AirCourse Constant(double temperatureC, double dewPointC) => new([new AirStep(0, temperatureC, dewPointC)]);

    /// <summary>The air at a moment.</summary>
    /// <param name="timeS">Time since the coat landed, s.</param>
    public AirStep At(double timeS)
    {
        int last = 0;
        while (last + 1 < Steps.Count && Steps[last + 1].FromS <= timeS)
        {
            last++;
        }

        return Steps[last];
    }

    /// <summary>The same course with other air in each step.</summary>
    /// <param name="change">Makes the air of a step; its time is kept.</param>
    public AirCourse With(Func<AirStep, AirStep> change)
    {
        ArgumentNullException.ThrowIfNull(change);
        return new([.. Steps.Select(step => change(step) with { FromS = step.FromS })]);
    }

    /// <summary>Partial pressure of water vapour of a step, Pa.</summary>
    internal static double VapourPressurePa(AirStep step) => SaturationPressure.OverWater(Math.Max(step.DewPointC, DewPoint.LowestC));
}
