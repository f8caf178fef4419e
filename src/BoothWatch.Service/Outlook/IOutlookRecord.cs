using BoothWatch.Outlook;

namespace BoothWatch.Service.Outlook;

/// <summary>Where the earlier days come from: the journal, or the invented ones of the scripted shop.</summary>
internal interface IOutlookRecord
{
    /// <summary>True where the days are invented.</summary>
    bool IsInvented { get; }

    /// <summary>The days before a day.</summary>
    /// <param name="today">The day.</param>
    /// <param name="most">Days looked back.</param>
    /// <param name="cancellationToken">Ends the reading.</param>
    /// <exception cref="Outputs.Series.JournalException">The journal cannot be read; the message names the file and the fix.</exception>
    AirPast Before(DateOnly today, int most, CancellationToken cancellationToken);
}
