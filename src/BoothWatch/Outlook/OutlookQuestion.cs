namespace BoothWatch.Outlook;

/// <summary>What the outlook is asked.</summary>
public sealed record OutlookQuestion
{
    /// <summary>Usual days looked back.</summary>
    public const int UsualWindow = 30;

    /// <summary>The farthest step, ten hours.</summary>
    public const int MostSteps = 600 / AirDay.SlotMinutes;

    /// <summary>Days on record, at this time of day, below which nothing is said: those that the first scored forecast is made of, and those that are scored.</summary>
    public const int LeastDays = OutlookScore.LeastMembers + HorizonScore.LeastDays;

    /// <summary>The record of the booth.</summary>
    public required AirPast Past { get; init; }

    /// <summary>The day in the shop.</summary>
    public required DateOnly Today { get; init; }

    /// <summary>The time of day in the shop.</summary>
    public required TimeSpan TimeOfDay { get; init; }

    /// <summary>When the working day ends, time of day in the shop.</summary>
    public required TimeSpan DayEnds { get; init; }

    /// <summary>
    /// The air now; where the booth is known to be heading elsewhere, also what it would come to after each step without any change outdoors, the
    /// last of which holds on. Empty: not known.
    /// </summary>
    public required IReadOnlyList<OutlookAir> Start { get; init; }

    /// <summary>Critical dew point of the coat in hand.</summary>
    public required CriticalDewPoints Critical { get; init; }

    /// <summary>Blush margin that the verdict wants, with its uncertainty, °C.</summary>
    public required double WantedC { get; init; }

    /// <summary>Days looked back; the default is the usual month.</summary>
    public int Window { get; init; } = UsualWindow;
}
