namespace BoothWatch.Service.Page;

/// <summary>Where the page finds the past. The composition root binds it to the journal, so that the page does not know the journal.</summary>
public interface IHistory
{
    /// <summary>
    /// The points from <paramref name="from"/> to <paramref name="until"/>, oldest first, thinned to about <paramref name="points"/>.
    /// Times without data are simply absent.
    /// </summary>
    /// <exception cref="HistoryUnavailableException">The past cannot be read now.</exception>
    IReadOnlyList<HistoryPoint> Read(DateTimeOffset from, DateTimeOffset until, int points);
}
