// The one page that is there without a session: it asks for the password.
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { Button, Form, Input, Label, TextField } from 'react-aria-components';
import { ErrorNotice } from '../../parts/failed.tsx';
import { signIn } from '../../queries/doors.ts';

export default function SignInPage() {
  const enter = useMutation(signIn(useQueryClient()));
  const [password, setPassword] = useState('');
  return (
    <>
      <header className="masthead">
        <span className="masthead-name">Barmline</span>
      </header>
      <main id="content" tabIndex={-1}>
        <h1 className="season-title">Sign in</h1>
        <p className="lead-text">This server is kept shut by a password.</p>
        <Form
          className="sign-in"
          onSubmit={(event) => {
            event.preventDefault();
            enter.mutate(password, { onSettled: () => setPassword('') });
          }}
        >
          <TextField
            className="field"
            type="password"
            name="password"
            autoComplete="current-password"
            value={password}
            onChange={setPassword}
            autoFocus
          >
            <Label>Password</Label>
            <Input className="input" />
          </TextField>
          <Button
            type="submit"
            className="button first"
            isDisabled={password === '' || enter.isPending}
          >
            Sign in
          </Button>
        </Form>
        {enter.isError && <ErrorNotice error={enter.error} />}
        <p className="quiet">
          Lost? On the machine that runs the server, <code>npm run password</code> sets a new one.
          Calendars go on without it.
        </p>
      </main>
    </>
  );
}
