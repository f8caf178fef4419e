using System.Collections.Immutable;
using System.Threading.Channels;
using BoothWatch.Jobs;
using BoothWatch.Limits;
using BoothWatch.Service.Assessing;
using BoothWatch.Service.Jobs;
using BoothWatch.Service.Outputs.Series;
using BoothWatch.Verdicts;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Limits;

/// <summary>
/// Finds the shop's own limit anew when a job changed and, as coats grow old, now and then; puts it in force when it is switched on and
/// no coat is being sprayed. On a thread of its own: the loop only ever reads <see cref="PolicyInForce"/>.
/// </summary>
public sealed partial class LimitKeeper(
    JobStore store, LimitCoatQuery query, PolicyInForce policy, IOptions<LimitOptions> options, TimeProvider time, ILogger<LimitKeeper> logger) : BackgroundService
{
    /// <summary>How often it looks without being told: coats grow old, and a clock that was not set at the start is set.</summary>
    public static readonly TimeSpan Every = TimeSpan.FromMinutes(1);

    /// <summary>A coat that nobody ended counts as being sprayed for so long.</summary>
    public static readonly TimeSpan LongestCoat = TimeSpan.FromHours(1);

    private readonly Channel<bool> _changes = Channel.CreateBounded<bool>(new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropWrite });
    private volatile LimitState _state = new(null, [], null, false, null);
    private bool _isFirst = true;

    /// <summary>Raised on the keeper's own thread each time it has looked.</summary>
    internal event Action? Looked;

    /// <summary>What is known now.</summary>
    public LimitState State => _state;

    /// <summary>The rules as the settings have them.</summary>
    public LimitRules Rules => new()
    {
        ConfiguredMarginC = policy.Configured.RequiredMarginC,
        CoverageFactor = policy.Configured.CoverageFactor,
        FloorC = options.Value.FloorC,
        CeilingC = options.Value.CeilingC,
        LeastCoats = options.Value.LeastCoats,
        LeastCloseDays = options.Value.LeastCloseDays,
        LeastJudgedPct = options.Value.LeastJudgedPct,
        LeastBlushed = options.Value.LeastBlushed,
    };

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        await Task.Yield();
        store.Changed += Note;
        try
        {
            while (true)
            {
                Renew();
                Looked?.Invoke();
                using CancellationTokenSource look = CancellationTokenSource.CreateLinkedTokenSource(stoppingToken);
                await Task.WhenAny(_changes.Reader.ReadAsync(look.Token).AsTask(), Task.Delay(Every, time, look.Token));
                await look.CancelAsync();
                stoppingToken.ThrowIfCancellationRequested();
            }
        }
        finally
        {
            store.Changed -= Note;
        }
    }

    /// <summary>Finds the limit from the journal as it is now, and puts it in force where it may.</summary>
    internal void Renew()
    {
        try
        {
            LimitEvidence evidence = query.Read();
            (ShopLimit limit, ImmutableArray<BlushCurvePoint> curve) = evidence.SaysAs(_state.Evidence) ? (_state.Limit!, _state.Curve) : Find(evidence);
            VerdictPolicy next = options.Value.Enabled && limit.Change != LimitChange.None
                ? policy.Configured.WithShopLimit(limit.RequiredMarginC, limit.BlushesBelowC, limit.Coats)
                : policy.Configured;
            bool waits = next != policy.Current && !_isFirst && IsCoatBeingSprayed();
            if (!waits)
            {
                PutInForce(next);
            }

            _isFirst = false;
            _state = new LimitState(limit, curve, evidence, waits, null);
        }
        catch (Exception trouble) when (trouble is JournalException or ArgumentException or InvalidOperationException or ArithmeticException)
        {
            // Coats may have begun while it was not known.
            _isFirst = false;

            // What is not known must not loosen anything: a raised limit stays, a lowered one goes.
            if (policy.Current.RequiredMarginC < policy.Configured.RequiredMarginC)
            {
                PutInForce(policy.Configured);
            }

            if (_state.Trouble is null)
            {
                LogTrouble(trouble.Message, policy.Current.RequiredMarginC);
            }

            _state = new LimitState(null, [], null, false, trouble.Message);
        }
    }

    private (ShopLimit Limit, ImmutableArray<BlushCurvePoint> Curve) Find(LimitEvidence evidence)
    {
        LimitCoat[] coats = CoatsOf(evidence);
        return (ShopLimit.Of(coats, evidence.InAll, Rules), BlushCurve.Of(coats, Rules));
    }

    private LimitCoat[] CoatsOf(LimitEvidence evidence) =>
    [
        .. evidence.Coats.Select(coat => new LimitCoat(
            coat.CoatId,
            DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(coat.Start, time.LocalTimeZone).DateTime),
            coat.MarginC,
            coat.UncertaintyC,
            coat.Blushed)),
    ];

    private bool IsCoatBeingSprayed()
    {
        DateTimeOffset now = time.GetUtcNow();
        return store.Running().Any(job => job.OpenCoat is { } coat && now - coat.Details.Start < LongestCoat);
    }

    private void PutInForce(VerdictPolicy next)
    {
        VerdictPolicy before = policy.Current;
        policy.Set(next);
        if (next.RequiredMarginC != before.RequiredMarginC)
        {
            LogChanged(next.RequiredMarginC, before.RequiredMarginC, next.ShopCoats ?? 0);
        }
    }

    private void Note(Job job) => _changes.Writer.TryWrite(true);

    [LoggerMessage(321, LogLevel.Information, "The required margin is {MarginC:0.0} °C now, before {BeforeC:0.0} °C (from {Coats} of this shop's coats; 0: the settings)")]
    private partial void LogChanged(double marginC, double beforeC, int coats);

    [LoggerMessage(322, LogLevel.Warning, "The shop's own limit cannot be found, the required margin is {MarginC:0.0} °C: {Problem}")]
    private partial void LogTrouble(string problem, double marginC);
}
