using BoothWatch.Service.Commands;

return await CommandLine.RunAsync(args, new CommandStreams(Console.In, Console.Out, Console.Error));
