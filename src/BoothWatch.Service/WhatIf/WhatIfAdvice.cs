using BoothWatch.Service.Advice;
using BoothWatch.Service.Page;

namespace BoothWatch.Service.WhatIf;

/// <summary>Answers one question at a time, so that whoever plays with the sliders takes one core at most.</summary>
/// <param name="adviser">The physics and the rules, with the shop's own settings.</param>
/// <param name="turns">Who may work now.</param>
internal sealed class WhatIfAdvice(Adviser adviser, OneAtATime turns)
{
    /// <summary>What may be asked: the arguments of <c>advise</c>, but for the file, which only the machine's own user may name.</summary>
    public static IReadOnlyList<AdviseArgument> Arguments { get; } = [.. AdviseArguments.All.Where(argument => argument != AdviseArguments.Mix)];

    /// <summary>The answer, or null and what is wrong with the question; nothing is wrong where there is an answer.</summary>
    /// <param name="given">Values by argument name, each with a unit or in the argument's own.</param>
    /// <param name="cancellationToken">The caller went away.</param>
    public async Task<(AdviseAnswer? Answer, IReadOnlyList<ArgumentError> Errors)> Answer(IReadOnlyDictionary<string, string> given, CancellationToken cancellationToken)
    {
        ArgumentError[] unknown =
        [
            .. given.Where(pair => !Arguments.Any(argument => argument.Name == pair.Key))
                .Select(pair => new ArgumentError(pair.Key, pair.Value, $"it is no parameter of this address; {NearestOf(pair.Key)}")),
        ];
        if (unknown.Length > 0)
        {
            return (null, unknown);
        }

        return await turns.Do(() => (adviser.Answer(given, out IReadOnlyList<ArgumentError> errors), errors), cancellationToken);
    }

    private static string NearestOf(string name) => Configuration.NearestName.Hint(name, Arguments.Select(argument => argument.Name));
}
