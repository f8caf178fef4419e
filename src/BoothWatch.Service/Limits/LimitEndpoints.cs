using BoothWatch.Limits;
using BoothWatch.Service.Assessing;
using BoothWatch.Service.Jobs;
using BoothWatch.Service.Outputs.Series;
using BoothWatch.Service.Page;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Limits;

/// <summary>What the addresses of the shop's own limit answer. Nothing is worked out here: the keeper did.</summary>
internal sealed class LimitEndpoints(
    LimitKeeper keeper, PolicyInForce policy, JournalLocation location, DegreeText text, LimitDrawing drawing, OneAtATime turns, IOptions<LimitOptions> options)
{
    private readonly LimitWords _words = new(text);

    public JsonHttpResult<LimitAnswer> Limit()
    {
        LimitState state = keeper.State;
        LimitRules rules = keeper.Rules;
        bool enabled = options.Value.Enabled;
        double inForceC = policy.Current.RequiredMarginC;
        LimitAnswer answer = new()
        {
            Enabled = enabled,
            InForceC = inForceC,
            ConfiguredC = rules.ConfiguredMarginC,
            ShopC = state.Limit?.RequiredMarginC,
            Change = state.Limit?.Change,
            BlushesBelowC = state.Limit?.BlushesBelowC,
            WaitsForCoat = state.WaitsForCoat,
            Trouble = state.Trouble,
            Headline = _words.Headline(state, rules, enabled, inForceC),
            Words = [.. _words.Rest(state, rules, enabled)],
            Threshold = state.Limit?.Threshold,
            NeededMargin = state.Limit?.NeededMargin,
            FloorC = rules.FloorC,
            CeilingC = rules.CeilingC,
            Gates = state.Limit?.Gates ?? [],
            From = state.Evidence?.From,
            NotMarked = state.Evidence?.NotMarked ?? 0,
            DrySpray = state.Evidence?.DrySpray ?? 0,
            AirNotKnown = state.Evidence?.AirNotKnown ?? 0,
            IsDemo = location.IsDemo,
            Coats =
            [
                .. state.Evidence?.Coats.Select(coat => new LimitAnswerCoat(
                    coat.CoatId, coat.JobId, coat.Start, coat.MarginC, coat.UncertaintyC, coat.Outcome, coat.MarginC < rules.WantedMarginC(coat.UncertaintyC))) ?? [],
            ],
            Curve = state.Curve,
        };
        return TypedResults.Json(answer, JobsJson.Options);
    }

    public async Task<IResult> Chart(HttpRequest request, CancellationToken cancellationToken)
    {
        QueryText query = new(request.Query);
        (int width, int height, string theme) = query.Picture();
        if (query.Problem is { } problem)
        {
            return problem;
        }

        return TypedResults.Content(await turns.Do(() => drawing.Draw(keeper.State, keeper.Rules, policy.Current.RequiredMarginC, width, height, theme), cancellationToken), "image/svg+xml");
    }
}
