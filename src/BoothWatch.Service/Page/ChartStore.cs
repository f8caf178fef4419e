namespace BoothWatch.Service.Page;

/// <summary>
/// Draws charts one at a time and keeps the newest few for some seconds: many browsers, or a script that asks for
/// ever other sizes, cost a small board no more than one drawing at once.
/// </summary>
public sealed class ChartStore(ChartDrawing drawing, IHistory history, TimeProvider time) : IDisposable
{
    /// <summary>How long a drawing is served again.</summary>
    public static readonly TimeSpan KeepFor = TimeSpan.FromSeconds(4);

    private const int MostKept = 8;
    private readonly SemaphoreSlim _one = new(1, 1);
    private readonly Dictionary<string, (long DrawnAt, ChartPicture Picture)> _kept = [];

    /// <summary>The chart. <paramref name="key"/> names all that the caller chose, without the moving end of the time axis.</summary>
    public async Task<ChartPicture> Get(string key, ChartRequest request, CancellationToken cancellationToken)
    {
        await _one.WaitAsync(cancellationToken);
        try
        {
            if (_kept.TryGetValue(key, out (long DrawnAt, ChartPicture Picture) kept) && time.GetElapsedTime(kept.DrawnAt) < KeepFor)
            {
                return kept.Picture;
            }

            if (_kept.Count >= MostKept)
            {
                _kept.Remove(_kept.MinBy(k => k.Value.DrawnAt).Key);
            }

            ChartPicture picture = Draw(request);
            _kept[key] = (time.GetTimestamp(), picture);
            return picture;
        }
        finally
        {
            _one.Release();
        }
    }

    private ChartPicture Draw(ChartRequest request)
    {
        try
        {
            return new ChartPicture(drawing.Draw(request, history.Read(request.From, request.To, request.Width)), IsOfThePast: true);
        }
        catch (HistoryUnavailableException trouble)
        {
            return new ChartPicture(drawing.DrawTrouble(request, trouble.Message), IsOfThePast: false);
        }
    }

    /// <inheritdoc/>
    public void Dispose() => _one.Dispose();
}
