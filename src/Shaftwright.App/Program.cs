using System.Text;
using Shaftwright.App.Verbs;

// ±, · and ø come out right on every system's console.
Console.OutputEncoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
Console.InputEncoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
return await CommandLine.RunAsync(args, new Streams(Console.In, Console.Out, Console.Error));
