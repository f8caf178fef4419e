using System.Globalization;
using System.Text.Json;
using BoothWatch.Service.Advice;
using BoothWatch.Service.Tests.Advice;
using BoothWatch.Service.Tests.Commands;
using BoothWatch.Service.Tests.Jobs;
using BoothWatch.Service.WhatIf;

namespace BoothWatch.Service.Tests.WhatIf;

public sealed class WhatIfTests : IAsyncLifetime
{
    private JobHost _host = null!;

    public async Task InitializeAsync() => _host = await JobHost.Start();

    public async Task DisposeAsync() => await _host.DisposeAsync();

    [Theory]
    [InlineData("temperature=24C&humidity=72&coat=flash", "--temperature", "24C", "--humidity", "72", "--coat", "flash")]
    [InlineData("temperature=86F&humidity=80&piece=80F&coat=clear&retarder=10", "--temperature", "86F", "--humidity", "80", "--piece", "80F", "--coat", "clear", "--retarder", "10")]
    [InlineData("temperature=12&dew-point=11&wet-film=4mil&air-speed=1", "--temperature", "12", "--dew-point", "11", "--wet-film", "4mil", "--air-speed", "1")]
    public async Task Answer_IsThatOfTheCommandAdvise(string query, params string[] arguments)
    {
        string page = await _host.Text("/api/what-if?" + query);

        using var program = new BuiltProgram(Path.GetTempPath(), ["advise", .. arguments, "--json"]);
        CommandResult command = await program.EndAsync();

        Assert.True(AdviseSchema.Accepts(page), page);
        Assert.Equal(command.Out.Trim(), page);
    }

    [Theory]
    [InlineData("temperature=24&humidity=0.6", "humidity is '0.6': that looks like a fraction")]
    [InlineData("temperature=24&humidity=60&piece=99", "piece is '99': out of range; give a temperature from -15 to 55 °C")]
    [InlineData("humidity=60", "temperature: it is missing")]
    [InlineData("temperature=24&humidity=60&substrate=ice", "substrate is 'ice': it is not in config/materials")]
    [InlineData("temperature=24&humidty=60", "humidty is '60': it is no parameter of this address; did you mean humidity?")]
    [InlineData("temperature=24&humidity=60&mix=/etc/passwd", "mix is '/etc/passwd': it is no parameter of this address")]
    [InlineData("temperature=24&temperature=25&humidity=60", "temperature is '24,25': a decimal point is a point, not a comma")]
    public async Task WrongParameter_IsNamed_WithItsValueAndTheFix(string query, string says)
    {
        using HttpClient http = new();
        using HttpResponseMessage answer = await http.GetAsync(new Uri($"{_host.Url}/api/what-if?{query}"));
        JsonElement problem = AdviseSchema.Parse(await answer.Content.ReadAsStringAsync());

        Assert.Equal(400, (int)answer.StatusCode);
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType?.MediaType);
        Assert.StartsWith(says, problem.GetProperty("detail").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Choices_CanAllBeAsked()
    {
        JsonElement choices = await _host.Get("/api/what-if/choices");
        IEnumerable<string> Ids(string list) => choices.GetProperty(list).EnumerateArray().Select(one => one.ValueKind == JsonValueKind.String ? one.GetString()! : one.GetProperty("id").GetString()!);
        IEnumerable<string> questions =
        [
            .. choices.GetProperty("kinds").EnumerateArray().Select(kind => string.Create(
                CultureInfo.InvariantCulture, $"coat={kind.GetProperty("kind").GetString()}&thinner={kind.GetProperty("thinnerParts").GetDouble()}&wet-film={kind.GetProperty("wetFilmUm").GetDouble()}")),
            .. Ids("thinners").Select(id => "thinner-material=" + Uri.EscapeDataString(id)),
            .. Ids("retarders").Select(id => "retarder-material=" + Uri.EscapeDataString(id)),
            .. Ids("substrates").Select(id => "substrate=" + Uri.EscapeDataString(id)),
        ];

        foreach (string question in questions)
        {
            JsonElement answer = await _host.Get("/api/what-if?temperature=22&humidity=50&" + question);
            Assert.False(string.IsNullOrEmpty(answer.GetProperty("verdict").GetString()), question);
        }

        Assert.True(questions.Count() > 8, "the lists are empty");
    }

    [Fact]
    public void EveryArgumentOfAdvise_ButTheFile_MayBeAsked() => Assert.Equal(
        AdviseArguments.All.Select(argument => argument.Name).Except(["mix"]),
        WhatIfAdvice.Arguments.Select(argument => argument.Name));
}
